//! The main task of each tool, by touch on the pad and by hardware keyboard, on a phone.

use anyhow::Result;
use browser::{Phone, Setup};
use xtask::server::Serving;

async fn phone() -> Result<(Serving, Phone)> {
    let serving = Serving::start(&xtask::dist())?;
    let phone = Phone::start(&serving.url(), &Setup::default()).await?;
    Ok((serving, phone))
}

#[tokio::test]
async fn measure() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("service/measure").await?;
    // It answers at once, and the pad is ready: no tap to begin.
    phone.strip_says("51.8 ml | Pour 1½ oz + ¼ oz").await?;
    phone.press("1 ½ oz").await?;
    assert_eq!(phone.value("amount").await?, "1½ oz");
    phone.strip_says("44.4 ml | Pour 1½ oz").await?;
    phone.press("more + 2 dash").await?;
    assert_eq!(phone.value("amount").await?, "1½ oz + 2 dash");
    phone.strip_says("46 ml").await?;
    phone.type_in("amount", "0,75 cl").await?;
    phone.strip_says("7.5 ml | Pour ¼ oz").await?;
    phone.type_in("amount", "500 g").await?;
    phone.choose("liquid", "honey").await?;
    phone.strip_says("352 ml").await?;
    assert!(phone.words().await?.contains("Honey: 1.421 g/ml. Taken at 1 156 g/l sugar."));
    // The same spirit weighs less to the millilitre when it is warm.
    phone.choose("liquid", "london-dry-gin").await?;
    phone.strip_says("527 ml").await?;
    phone.tap("#at").await?;
    phone.press("1 8 −").await?;
    assert_eq!(phone.value("at").await?, "−18");
    phone.strip_says("515 ml").await?;
    phone.type_in("at", "50").await?;
    assert!(phone.words().await?.contains("Known from −20 to 40 °C."));
    phone.type_in("at", "-10").await?;
    phone.choose("liquid", "lemon-juice").await?;
    phone.until("document.getElementById('at-problem')?.textContent.includes('begins to freeze')").await?;
    phone.choose("liquid", "own").await?;
    phone.type_in("own", "1.25").await?;
    phone.strip_says("400 ml").await?;
    Ok(())
}

#[tokio::test]
async fn scale() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("service/scale").await?;
    phone.tap("#serves").await?;
    phone.press("2 4").await?;
    phone.strip_says("24 serves").await?;
    assert!(phone.words().await?.contains("1 080 ml"), "24 × 45 ml of brandy");
    phone.type_in("spec", "2 oz gin\n3/4 oz lemon juice\nwhatever is left\n60 syrup").await?;
    assert!(phone.words().await?.contains("60 of what? Add a unit, like 60 ml."));
    phone.tap_on("60 ml syrup").await?;
    assert!(phone.value("spec").await?.ends_with("60 ml syrup"));
    assert!(phone.words().await?.contains("whatever is left"), "a line that can't be read stays");
    phone.tap_on("What I have").await?;
    phone.press("4 7 0 ml").await?;
    assert_eq!(phone.value("have").await?, "470 ml");
    phone.strip_says("7.95 times the spec").await?;
    phone.tap_on("My jiggers").await?;
    assert!(phone.words().await?.contains("16 oz"), "gin in jiggers");
    Ok(())
}

#[tokio::test]
async fn serves() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("batch/serves").await?;
    phone.press("3 . 5 l").await?;
    phone.strip_says("38 serves of 92 ml | 4 ml spare. Pour 92.1 ml to empty it").await?;
    phone.type_in("loss", "2").await?;
    phone.strip_says("37 serves of 92 ml").await?;
    phone.type_in("loss", "").await?;
    phone.tap_on("Serves wanted").await?;
    phone.press("3 0").await?;
    assert_eq!(phone.value("wanted").await?, "30");
    phone.strip_says("2 760 ml | 5 bottles of 700 ml, 44 ml in the last").await?;
    Ok(())
}

#[tokio::test]
async fn milk_wash() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/milk-wash").await?;
    phone.press("8 0 0 ml").await?;
    phone.strip_says("160 ml milk").await?;
    phone.tap("#ratio").await?;
    phone.press("1 : 4").await?;
    assert_eq!(phone.value("ratio").await?, "1:4");
    phone.strip_says("200 ml milk | It clots: pour the drink over the milk").await?;
    assert!(phone.words().await?.contains("Contains milk"));
    phone.tap_on("Milk I have").await?;
    phone.type_in("milk", "1 oz").await?;
    phone.type_in("ratio", "1:5¾").await?;
    phone.strip_says("5¾ oz drink, 170 ml").await?;
    Ok(())
}

#[tokio::test]
async fn acid() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/acid").await?;
    phone.press("7 5 0 ml").await?;
    phone.strip_says("34.4 g citric | in water to 750 ml").await?;
    phone.choose("profile", "lime-bar").await?;
    phone.strip_says("30.0 g citric + 15.0 g malic | in water to 750 ml").await?;
    // It is sourer than the limes that Balance counts, and that is said.
    assert!(phone.words().await?.contains("33 % sourer than lime juice as Balance counts it"));
    phone.choose("profile", "lime-2008").await?;
    phone.strip_says("34.4 g citric |").await?;
    assert!(phone.words().await?.contains("Penniston"));
    phone.type_in("juice", "1/3 l").await?;
    phone.strip_says("15.3 g citric |").await?;
    phone.tap_on("Use up powder").await?;
    phone.press("4 5 . 9").await?;
    assert_eq!(phone.value("citric").await?, "45.9");
    phone.type_in("malic", "").await?;
    phone.strip_says("1 000 ml lime juice").await?;
    Ok(())
}

#[tokio::test]
async fn sharpen_swap_and_titrate() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/acid").await?;
    phone.tap_on("Sharpen").await?;
    phone.press("5 0 0 ml").await?;
    phone.strip_says("19.6 g citric | into Orange juice").await?;
    phone.tap_on("My own parts").await?;
    phone.strip_says("6.6 g malic").await?;
    phone.type_in("part_citric", "").await?;
    phone.type_in("part_malic", "0").await?;
    phone.strip_says("No answer yet").await?;
    phone.tap_on("Swap acids").await?;
    phone.press("2 0 g").await?;
    phone.strip_says("20.9 g | Malic acid titrates as 20.0 g Citric acid").await?;
    assert!(phone.words().await?.contains("Equal by titration is not equal in taste"));
    phone.tap_on("Titrate").await?;
    phone.press("1 5 ml").await?;
    phone.strip_says("48 g/l | acid, as citric").await?;
    assert!(phone.words().await?.contains("gloves and goggles"));
    phone.reload().await?;
    phone.strip_says("48 g/l").await?;
    Ok(())
}

#[tokio::test]
async fn syrup() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/syrup").await?;
    phone.strip_says("885 g sugar + 442 g water | Makes 1 000 ml at 66.7 °Bx. May crystallise at 4 °C").await?;
    phone.press("7 5 0 ml").await?;
    phone.tap("#sweetness").await?;
    phone.press("1 : 1").await?;
    phone.strip_says("461 g sugar + 461 g water | Makes 750 ml at 50.0 °Bx").await?;
    phone.tap_on("The cup").await?;
    phone.strip_says("at 45.9 °Bx").await?;
    phone.type_in("sweetness", "99").await?;
    phone.strip_says("No answer yet").await?;
    phone.tap_on("Put right").await?;
    phone.type_in("reads", "62").await?;
    phone.type_in("wants", "65").await?;
    phone.strip_says("111 g sugar | Stir it in: makes 1 071 ml at 65.0 °Bx").await?;
    assert!(phone.words().await?.contains("A refractometer lies where there is alcohol"));
    phone.tap_on("Swap").await?;
    phone.press("2 0 ml").await?;
    phone.choose("swap_to", "sugar").await?;
    phone.strip_says("17.7 g | of Sugar").await?;
    phone.tap_on("Juice").await?;
    phone.type_in("juice", "105 ml").await?;
    phone.type_in("juice_wants", "35").await?;
    phone.strip_says("40.4 g sugar").await?;
    Ok(())
}

#[tokio::test]
async fn strength() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/strength").await?;
    phone.press("1 l").await?;
    phone.tap("#from").await?;
    phone.press("5 0").await?;
    phone.strip_says("255 g water | Weighed, or 255 ml at 20 °C").await?;
    // Proof is by volume at 60 °F, so this is a hair more than 50 % at 20 °C.
    phone.type_in("from", "100 proof").await?;
    phone.strip_says("256 g water").await?;
    phone.type_in("to", "60").await?;
    phone.strip_says("No answer yet").await?;
    phone.type_in("to", "40").await?;
    phone.tap_on("Bottle to fill").await?;
    phone.strip_says("559 ml spirit + 143 g water").await?;
    phone.tap_on("Convert").await?;
    phone.press("5 7").await?;
    phone.strip_says("114 US proof + 49.1 % mass").await?;
    phone.tap_on("Blend").await?;
    phone.until("!document.querySelector('.pad')").await?;
    phone.type_in("pours", "1 l neutral spirit 95 %\n1 l water").await?;
    phone.strip_says("48.9 % vol + 1 941 ml").await?;
    phone.reload().await?;
    phone.strip_says("48.9 % vol").await?;
    Ok(())
}

#[tokio::test]
async fn balance() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("service/balance").await?;
    phone.strip_says("27.3 % vol | Sugar 87.1, acid 5.36 g/l, 16.3 : 1").await?;
    phone.type_in("spec", "60 ml gin 47 %\n22.5 ml lemon juice\n20 ml moon dust\n1 egg white").await?;
    phone.strip_says("Without “moon dust”: see its line below").await?;
    let words = phone.words().await?;
    assert!(words.contains("as London dry gin, 47 % vol"), "{words}");
    assert!(words.contains("Not known, so not counted. What is it like?"), "{words}");
    assert!(words.contains("as Egg white; 1 egg white: about 30 ml, rule of thumb"), "{words}");
    assert!(words.contains("May need declaring, by these names alone: egg"), "{words}");
    phone.tap_on("Syrup").await?;
    assert!(phone.value("spec").await?.contains("20 ml moon dust (as syrup)"));
    phone.strip_says("21.4 % vol | Sugar 96.5, acid 7.9 g/l, 12.2 : 1").await?;
    // Plain words on demand.
    phone.tap("main details summary").await?;
    phone.until("document.querySelector('details[open] p').textContent.includes('Alcohol by volume')").await?;
    phone.choose("ice", "typed").await?;
    phone.tap("#water").await?;
    phone.press("2 5").await?;
    phone.strip_says("17.1 % vol").await?;
    // It is the spec of Scale, and Scale shows its balance.
    phone.open("service/scale").await?;
    assert!(phone.words().await?.contains("Balance, before ice"));
    phone.tap_on("Balance").await?;
    phone.strip_says("17.1 % vol").await?;
    phone.reload().await?;
    phone.strip_says("17.1 % vol").await?;
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn a_pasted_list_is_read_asked_about_and_poured() -> Result<()> {
    // As tests/desk/pasted.rs has it, where every line is looked at.
    let pasted = "• 1-1/2 oz — London dry gin\n| lime juise | ¾ oz |\n2 EL Zuckersirup\njuice of 1 lime\n1 egg white\n\
        2–3 dashes bitters\n- [ ] 15 ml crème de cassis\n20ml/¾oz dry vermuth\n10 % water\n20 ml moon dust\ntop with soda\nLime wheel";
    let (_serving, phone) = phone().await?;
    phone.open("service/balance").await?;
    phone.put("spec", pasted).await?;
    phone.strip_says("12.9 % vol | Without “10 % water” and others: see their lines below").await?;
    let words = phone.words().await?;
    for said in ["read as lime juice", "2–3: the middle counts", "How much fills the glass?", "A share of how much?"]
    {
        assert!(words.contains(said), "{said} is not in {words}");
    }
    // A tap on the strip goes to the first line that is asked about.
    phone.tap(".strip .leads").await?;
    phone.until("document.activeElement?.id === 'asked'").await?;
    assert!(
        phone
            .run("return document.getElementById('asked').textContent")
            .await?
            .as_str()
            .is_some_and(|row| row.contains("10 % water"))
    );
    // One tap settles each.
    phone.tap_on("Syrup").await?;
    phone.tap_on("90 ml soda").await?;
    phone.strip_says("7.4 % vol | Sugar 114, acid 6.97 g/l, 16.4 : 1").await?;
    phone.until("!document.querySelector('.leads')").await?;
    assert!(phone.words().await?.contains("10 % of the finished whole"));
    // And it is poured, for two.
    phone.finish("Scale it").await?;
    phone.until("location.hash === '#/service/scale'").await?;
    phone.type_in("serves", "2").await?;
    phone.strip_says("22¾ oz before ice, 670 ml | 2 serves").await?;
    // 1½ oz of gin, twice, as it was written.
    assert!(phone.words().await?.contains("3 oz"));
    // What a part is, is asked once for a list.
    phone.put("spec", "2 parts gin\n1 part lemon juice").await?;
    phone.tap_on("1 part = 30 ml").await?;
    phone.strip_says("6 oz before ice, 180 ml | 2 serves").await?;
    assert!(phone.value("spec").await?.ends_with("1 part lemon juice\n1 part = 30 ml"));
    // The lines of a spec, and what goes together in Strength, are read by the same reader.
    phone.open("prep/strength").await?;
    phone.tap_on("Blend").await?;
    phone.put("pours", pasted).await?;
    phone.strip_says("12.9 % vol + 191 ml | Without “10 % water”: see its line below").await?;
    phone.open("specs").await?;
    phone.tap_on("New spec").await?;
    phone.until("location.hash.startsWith('#/specs/spec')").await?;
    phone.tap_on("As text").await?;
    phone.put("lines", pasted).await?;
    phone.strip_says("6½ oz before ice, 191 ml | 12.9 % vol. 3 lines not counted").await?;
    phone.tap(".strip .leads").await?;
    phone.until("document.activeElement?.id === 'asked'").await?;
    phone.tap_on("Syrup").await?;
    phone.tap_on("90 ml soda").await?;
    phone.strip_says("11¼ oz before ice, 335 ml | 7.4 % vol").await?;
    phone.reload().await?;
    phone.strip_says("11¼ oz before ice, 335 ml | 7.4 % vol").await?;
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn a_mistake_has_words_beside_its_field_and_one_tap_settles_it() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("service/measure").await?;
    for (typed, words) in [
        ("0", "Zero makes nothing."),
        ("-3 oz", "Below zero can't be poured."),
        ("1000000 l", "That is more than 10 000 l."),
        ("5 splosh", "No unit is called “splosh”."),
        ("🍸", "isn't a number"),
        ("1/0", "zero below the line"),
    ] {
        // The driver's keyboard knows no characters beyond the first plane.
        if typed.chars().all(|c| u32::from(c) < 0x1_0000) {
            phone.type_in("amount", typed).await?;
        } else {
            phone.put("amount", typed).await?;
        }
        phone.until(&format!("document.getElementById('amount-problem')?.textContent.includes({words:?})")).await?;
        assert_eq!(
            phone.run("return document.getElementById('amount').getAttribute('aria-describedby')").await?,
            "amount-problem"
        );
    }
    phone.type_in("amount", "1,000 ml").await?;
    phone.tap_on("1000 ml").await?;
    phone.strip_says("33.8 oz").await?;
    // Ten thousand characters, as a paste would bring them.
    phone.run("const e = document.getElementById('amount'); e.value = '9'.repeat(10000); e.dispatchEvent(new Event('input', { bubbles: true }))").await?;
    phone.strip_says("No answer yet").await?;
    phone.type_in("amount", "").await?;
    phone.strip_says("Type an amount").await?;
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn clear_undo_copy_and_carry_on() -> Result<()> {
    let (serving, phone) = phone().await?;
    let permissions = serde_json::json!({ "origin": serving.url(), "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    phone.cdp("Browser.grantPermissions", permissions).await?;
    phone.open("prep/milk-wash").await?;
    phone.press("5 0 0 ml Done").await?;
    phone.tap_on("Copy").await?;
    phone.until("[...document.querySelectorAll('button')].some(b => b.textContent === 'Copied')").await?;
    let copied = phone.run_async("navigator.clipboard.readText().then(done, (e) => done(String(e)))").await?;
    let copied = copied.as_str().unwrap_or_default();
    assert!(copied.starts_with("100 ml milk\nIt clots: pour the drink over the milk\n"), "{copied}");
    phone.tap_on("Empty").await?;
    phone.until("document.querySelector('.strip.blank')").await?;
    phone.reload().await?;
    phone.until("document.querySelector('.strip.blank')").await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("100 ml milk").await?;
    phone.finish("Into serves").await?;
    phone.until("location.hash === '#/batch/serves'").await?;
    assert_eq!(phone.value("made").await?, "510 ml");
    phone.back().await?;
    phone.strip_says("100 ml milk").await?;
    Ok(())
}
