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
    phone.strip_says("51.8 ml | Pour 1½ oz + ¼ oz, exact").await?;
    phone.press("1 ½ oz").await?;
    assert_eq!(phone.value("amount").await?, "1½ oz");
    phone.strip_says("44.4 ml | Pour 1½ oz, exact").await?;
    phone.press("⋯ + 2 dash").await?;
    assert_eq!(phone.value("amount").await?, "1½ oz + 2 dash");
    phone.strip_says("46 ml").await?;
    phone.type_in("amount", "0,75 cl").await?;
    phone.strip_says("7.5 ml | Pour ¼ oz").await?;
    phone.type_in("amount", "500 g").await?;
    phone.run("const s = document.getElementById('liquid'); s.value = 'honey'; s.dispatchEvent(new Event('change', { bubbles: true }))").await?;
    phone.strip_says("352 ml").await?;
    assert!(phone.words().await?.contains("Honey at 20 °C: 1.420 g/ml. Source: from memory."));
    Ok(())
}

#[tokio::test]
async fn scale() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("service/scale").await?;
    phone.press("2 4").await?;
    phone.strip_says("×24").await?;
    assert!(phone.words().await?.contains("1 080 ml"), "24 × 45 ml of brandy");
    phone.type_in("spec", "2 oz gin\n3/4 oz lemon juice\nwhatever is left\n60 syrup").await?;
    assert!(phone.words().await?.contains("60 of what? Add a unit, like 60 ml."));
    phone.tap_on("60 ml syrup").await?;
    assert!(phone.value("spec").await?.ends_with("60 ml syrup"));
    assert!(phone.words().await?.contains("whatever is left"), "a line that can't be read stays");
    phone.tap_on("What I have").await?;
    phone.press("4 7 0 ml").await?;
    assert_eq!(phone.value("have").await?, "470 ml");
    phone.strip_says("×7.95").await?;
    phone.tap_on("My jiggers").await?;
    assert!(phone.words().await?.contains("16 oz"), "gin in jiggers");
    Ok(())
}

#[tokio::test]
async fn serves() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("batch/serves").await?;
    phone.press("3 . 5 l").await?;
    phone.strip_says("37 serves of 92 ml").await?;
    phone.type_in("loss", "0").await?;
    phone.strip_says("38 serves of 92 ml | 4 ml spare. Pour 92.1 ml to empty it").await?;
    phone.tap_on("Serves wanted").await?;
    phone.press("3 0").await?;
    assert_eq!(phone.value("wanted").await?, "30");
    phone.strip_says("2 760 ml | 5 bottles of 700 ml, 552 ml in each").await?;
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
    phone.strip_says("200 ml milk | 1 part milk to 4 parts drink, 1 000 ml together").await?;
    assert!(phone.words().await?.contains("Contains milk"));
    phone.tap_on("Milk to use").await?;
    phone.type_in("milk", "1 oz").await?;
    phone.type_in("ratio", "1:5¾").await?;
    phone.strip_says("170 ml drink").await?;
    Ok(())
}

#[tokio::test]
async fn acid() -> Result<()> {
    let (_serving, phone) = phone().await?;
    phone.open("prep/acid").await?;
    phone.press("7 5 0 ml").await?;
    phone.strip_says("30.0 g citric + 15.0 g malic | in water to 750 ml").await?;
    phone.run("const s = document.getElementById('profile'); s.value = 'lime-2008'; s.dispatchEvent(new Event('change', { bubbles: true }))").await?;
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
        phone.type_in("amount", typed).await?;
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
    phone.strip_says("That is too long for an amount.").await?;
    phone.type_in("amount", "").await?;
    phone.strip_says("– | Type an amount").await?;
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
    assert_eq!(copied, "100 ml milk\n1 part milk to 5 parts drink, 600 ml together");
    phone.tap_on("Clear").await?;
    phone.strip_says("–").await?;
    phone.reload().await?;
    phone.strip_says("–").await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("100 ml milk").await?;
    phone.tap_on("Share it out in serves").await?;
    phone.until("location.hash === '#/batch/serves'").await?;
    assert_eq!(phone.value("made").await?, "500 ml");
    phone.back().await?;
    phone.strip_says("100 ml milk").await?;
    Ok(())
}
