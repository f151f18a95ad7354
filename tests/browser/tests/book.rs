//! The book on a phone: specs and ingredients written, found, changed, deleted and brought back; in and out of files.

use anyhow::{Result, ensure};
use browser::{Phone, Setup, phone_with};
use serde_json::json;

#[tokio::test]
async fn a_spec_is_found_changed_deleted_and_brought_back() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.strip_says("0 specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.strip_says("3 specs").await?;
    phone.type_in("search", "VERJUS").await?;
    phone.strip_says("1 of 3 | VERJUS").await?;
    phone.tap_on("Hedgerow clerk").await?;
    phone.until("location.hash.startsWith('#/specs/spec')").await?;
    // It is read first, in the form that is open, and in another.
    phone.strip_says("% vol, as shaken 12 s").await?;
    phone.tap_on("clear").await?;
    phone.tap(".pours li:nth-child(2) .pour").await?;
    phone.until("document.querySelectorAll('.pour[aria-checked=true]').length === 1").await?;
    phone.tap("[aria-label='one more']").await?;
    phone.until("document.querySelector('.pour .much b').textContent === '100'").await?;
    phone.tap_on("Change").await?;
    phone.type_in("garnish", "bay leaf").await?;
    phone.tap_on("As text").await?;
    assert!(phone.value("lines").await?.starts_with("50 ml London dry gin\n25 ml hedge syrup"));
    // A line is added with the pad up and its ingredient offered at the foot; then moved up, and taken away.
    phone.tap_on("Line by line").await?;
    phone.tap_on("Add a line").await?;
    phone.press("3 0 ml Done").await?;
    phone.type_in("line_of", "dry verm").await?;
    phone.tap_on("Dry vermouth").await?;
    assert_eq!(phone.value("line_of").await?, "Dry vermouth");
    phone.tap_on("As text").await?;
    assert!(phone.value("lines").await?.ends_with("40 ml soda water\n30 ml Dry vermouth"));
    phone.tap_on("Line by line").await?;
    phone.tap("[aria-label='Up: 30 ml Dry vermouth']").await?;
    phone.tap_on("As text").await?;
    assert!(phone.value("lines").await?.ends_with("30 ml Dry vermouth\n40 ml soda water"));
    phone.tap_on("Line by line").await?;
    // Every line is a target of its own, high enough for a thumb.
    let low = "return [...document.querySelectorAll('.rows .opens, .actions .btn')].filter(e => e.getBoundingClientRect().height < 48).length";
    assert_eq!(phone.run(low).await?, 0);
    // Typed a letter at a time, amount and ingredient each keep their caret.
    phone.tap_on("hedge syrup").await?;
    assert_eq!(
        (phone.value("line_amount").await?, phone.value("line_of").await?),
        ("25 ml".into(), "hedge syrup".into())
    );
    phone.tap("#line_amount").await?;
    phone.press("2 0").await?;
    phone
        .until("document.getElementById('line_amount').value === '20' && document.activeElement.id === 'line_amount'")
        .await?;
    phone.press("Done").await?;
    assert_eq!(phone.value("line_amount").await?, "20 ml");
    phone.tap_on("Undo").await?;
    phone.until("document.getElementById('line_amount').value === '25 ml'").await?;
    phone.tap_on("Dry vermouth").await?;
    phone.tap_on("Remove").await?;
    phone.tap_on("As text").await?;
    assert!(!phone.value("lines").await?.contains("Dry vermouth"));
    // Undo, also after a reload; read again by then.
    phone.reload().await?;
    phone.until("document.body.innerText.includes('bay leaf')").await?;
    phone.tap_on("Undo").await?;
    phone.tap_on("Change").await?;
    // It is changed as it was last: as text.
    assert!(phone.value("lines").await?.contains("30 ml Dry vermouth"));
    // A field pasted over comes back too.
    let lines = phone.value("lines").await?;
    phone.put("lines", "60 ml something else").await?;
    phone.reload().await?;
    phone.tap_on("Undo").await?;
    phone.tap_on("Change").await?;
    assert_eq!(phone.value("lines").await?, lines);
    phone.tap_on("Done").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Delete").await?;
    phone.strip_says("Choose a spec in the book").await?;
    phone.open("specs").await?;
    phone.reload().await?;
    phone.tap_on("Clear search").await?;
    phone.strip_says("2 specs").await?;
    phone.tap_on("Undo").await?;
    phone.strip_says("3 specs").await?;
    // On to Scale with its lines.
    phone.tap_on("Orchard lantern").await?;
    phone.finish("More").await?;
    phone.tap_on("Scale it").await?;
    phone.until("location.hash === '#/service/scale'").await?;
    assert!(phone.value("spec").await?.starts_with("45 ml pear brandy\n30 ml pear juice"));
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn a_new_spec_is_typed_and_a_bar_s_own_figures_count() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("New spec").await?;
    phone.until("location.hash.startsWith('#/specs/spec')").await?;
    phone.type_in("name", "Cellar door").await?;
    phone.tap_on("As text").await?;
    phone.type_in("lines", "50 ml moon dust\n10 ml lemon juice").await?;
    phone.strip_says("1 line not counted").await?;
    phone.open("shelf/ingredients").await?;
    phone.tap_on("New ingredient").await?;
    phone.type_in("name", "moon dust").await?;
    phone.choose("like", "spirit-40").await?;
    phone.tap("#strength").await?;
    phone.press("4 8").await?;
    phone.strip_says("48 % vol").await?;
    phone.until("document.querySelector('h1').textContent === 'moon dust'").await?;
    phone.type_in("strength", "480").await?;
    phone.until("document.getElementById('strength-problem')?.textContent.includes('Type a strength')").await?;
    phone.type_in("strength", "48").await?;
    phone.open("specs/spec").await?;
    phone.strip_says("59.8 ml before ice | 40.1 % vol").await?;
    // Two forms of it, copied and taken away again. What is changed stays so while one looks elsewhere.
    phone.tap_on("Add a form").await?;
    phone.type_in("way", "long").await?;
    phone.type_in("lines", "50 ml moon dust\n100 ml soda water").await?;
    phone.strip_says("16.0 % vol").await?;
    phone.tap_on("Done").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Duplicate").await?;
    assert_eq!(phone.value("name").await?, "Cellar door (copy)");
    phone.open("specs").await?;
    phone.strip_says("2 specs").await?;
    phone.reload().await?;
    phone.strip_says("2 specs").await?;
    Ok(())
}

#[tokio::test]
async fn a_backup_goes_out_and_comes_back() -> Result<()> {
    let (serving, phone) = phone_with(browser::CATCH_FILES).await?;
    phone.open("specs/backup").await?;
    phone.tap_on("Put the demo in").await?;
    phone.strip_says("3 specs | Never backed up").await?;
    phone.tap_on("Save a backup").await?;
    phone.until("window.__given.length === 1").await?;
    phone.strip_says("Backed up today").await?;
    let text = phone.run("return window.__given[0]").await?;
    let text = text.as_str().unwrap_or_default().to_owned();
    assert!(text.contains("\"meniscus backup\"") && text.contains("Orchard lantern"));

    // On another phone, with one spec changed since.
    let other =
        Phone::start(&serving.url(), &Setup { before: browser::CATCH_FILES.into(), ..Setup::default() }).await?;
    other.open("specs/backup").await?;
    other.run(&format!("hand({})", json!(text))).await?;
    other.strip_says("5 new | Nothing is taken until you say").await?;
    other.tap_on("Add 5 to my book").await?;
    other.strip_says("3 specs").await?;
    let changed = text.replace("11 coins", "14 coins");
    other.run(&format!("hand({})", json!(changed))).await?;
    other.strip_says("0 new | 4 already here, 1 differing from yours").await?;
    assert!(other.words().await?.contains("Orchard lantern\ndiffers from yours"));
    other.tap_on("Take all, replacing mine").await?;
    assert!(other.stored("spec/demo-1").await?[0].contains("14 coins"));
    other.tap_on("Undo").await?;
    assert!(other.stored("spec/demo-1").await?[0].contains("11 coins"));
    other.run("hand('{\"kind\":\"meniscus backup\",\"version\":1,\"at\":1,\"specs\":[{\"id\":\"a/b\",\"data\":{\"name\":\"Lamp\"}}]}')").await?;
    other.strip_says("No lines in it").await?;
    assert!(other.words().await?.contains("Not yours yet. It is read, and not kept until you say."));
    assert!(other.words().await?.contains("Spec 1, “Lamp”: its id can't be kept, so it gets another."));
    other.tap_on("Not now").await?;
    other.tap_on("Take the demo away").await?;
    assert_eq!(other.stored("spec/").await?, Vec::<String>::new());
    assert_eq!(other.stored("ingredient/").await?, Vec::<String>::new());
    Ok(())
}

/// A hurried hand, with an import in the book: Undo takes back what was typed here, never the import behind it; that has
/// its own, in Backup, which says what was changed since.
#[tokio::test]
async fn undo_on_a_spec_leaves_the_import_alone() -> Result<()> {
    let (_serving, phone) = phone_with(browser::CATCH_FILES).await?;
    phone.open("specs/backup").await?;
    let spec = |n: u32| json!({ "id": format!("s{n}"), "data": { "name": format!("Lamp {n:03}"), "forms": [{ "lines": "60 ml London dry gin" }] } });
    let file =
        json!({ "kind": "meniscus backup", "version": 3, "at": 1, "specs": (0..300).map(spec).collect::<Vec<_>>() });
    phone.run(&format!("hand({})", json!(file.to_string()))).await?;
    phone.strip_says("300 new").await?;
    phone.tap_on("Add 300 to my specs").await?;
    phone.until("document.body.innerText.includes('Done: import of 300.')").await?;
    phone.open("specs/spec?id=s7").await?;
    phone.tap_on("Change").await?;
    phone.type_in("garnish", "bay leaf").await?;
    phone.tap("[aria-label='Undo: Garnish']").await?;
    phone.until("document.body.innerText.includes('Taken back: Garnish.')").await?;
    assert_eq!((phone.value("garnish").await?, phone.stored("spec/").await?.len()), (String::new(), 300));
    // Once more in a hurry: there is nothing else of this spec to take back.
    ensure!(!phone.words().await?.contains("Undo:"), "nothing else is offered here");
    phone.tap_on("Redo").await?;
    assert_eq!(phone.value("garnish").await?, "bay leaf");
    phone.reload().await?;
    ensure!(!phone.words().await?.contains("Undo:"), "nor after a reload");
    phone.open("specs/backup").await?;
    phone.tap("[aria-label^='undo import of 300']").await?;
    phone.until("document.body.innerText.includes('Lamp 007. What was changed stays')").await?;
    assert_eq!(phone.stored("spec/").await?.len(), 300, "it asks first");
    phone.tap_on("Undo the rest").await?;
    phone.until("document.body.innerText.includes('Taken back: import of 300.')").await?;
    assert_eq!(phone.stored("spec/").await?.len(), 1);
    ensure!(phone.stored("spec/s7").await?[0].contains("bay leaf"));
    Ok(())
}

#[tokio::test]
async fn a_spec_travels_as_a_link_a_code_a_recipe_and_a_table() -> Result<()> {
    let (serving, phone) = phone_with(browser::CATCH_FILES).await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.tap_on("Hedgerow clerk").await?;
    phone.tap_on("More").await?;
    phone.tap_on("Share as a link").await?;
    phone.until("document.querySelector('.code figcaption')?.textContent.includes('packed=')").await?;
    let link = phone.run("return document.querySelector('.code figcaption').textContent").await?;
    let link = link.as_str().unwrap_or_default().to_owned();
    ensure!(link.len() < 1200, "{} letters", link.len());
    assert_eq!(phone.foreign_requests().await?, Vec::<String>::new());

    // The code on the screen, read by a decoder of other make.
    phone.run("document.querySelector('.code svg').scrollIntoView({ block: 'center' })").await?;
    let modules = "const s = document.querySelector('.code svg'), n = s.viewBox.baseVal.width, p = s.querySelector('path');
        const rows = []; for (let y = 0; y < n; y++) { let row = ''; for (let x = 0; x < n; x++) row += p.isPointInFill(new DOMPoint(x + .5, y + .5)) ? '#' : ' '; rows.push(row) } return rows";
    let modules = phone.run(modules).await?;
    let rows: Vec<Vec<u8>> = modules
        .as_array()
        .into_iter()
        .flatten()
        .map(|row| row.as_str().unwrap_or_default().bytes().map(|dot| if dot == b'#' { 0 } else { 255 }).collect())
        .collect();
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(rows.len() * 4, rows.len() * 4, |x, y| rows[y / 4][x / 4]);
    let (_, read) = image.detect_grids()[0].decode()?;
    assert_eq!(read, link);

    // Opened on another phone it is shown first, and taken when asked.
    let other = Phone::start(&serving.url(), &Setup::default()).await?;
    other.open(link.split_once("#/").map_or("", |(_, address)| address)).await?;
    other.strip_says("% vol, as shaken 12 s").await?;
    ensure!(other.words().await?.contains("Not yours yet. It came inside the link; nothing was sent anywhere."));
    assert_eq!(other.run("return document.querySelectorAll('button.pour').length").await?, 0, "nothing to tick");
    assert_eq!(other.stored("spec/").await?, Vec::<String>::new());
    other.tap_on("Keep it").await?;
    other.until("location.hash.startsWith('#/specs/spec?id=')").await?;
    other.tap_on("Change").await?;
    other.tap_on("As text").await?;
    assert!(other.value("lines").await?.contains("20 ml hedge syrup"));
    // One cut short says so and changes nothing.
    let cut = link.split_once("#/").map_or("", |(_, address)| &address[..address.len() - 40]).to_owned();
    other.open(&cut).await?;
    other.strip_says("This link was cut short or changed").await?;

    phone.tap_on("Save as a recipe file").await?;
    phone.until("window.__given.length === 1").await?;
    let recipe = phone.run("return window.__given[0]").await?;
    assert!(recipe.as_str().is_some_and(|text| text.contains("\"@type\": \"Recipe\"") && text.contains("HowToStep")));
    phone.finish("Scale it").await?;
    phone.tap_on("Save as CSV").await?;
    phone.until("window.__given.length === 2").await?;
    let csv = phone.run("return window.__given[1]").await?;
    assert!(
        csv.as_str().is_some_and(
            |text| text.starts_with("\"ingredient\",\"amount\",\"remark\"\r\n\"London dry gin\",\"900 ml\"")
        ),
        "{csv}"
    );
    // And what is in Scale can be kept.
    phone.tap_on("Keep it in Specs").await?;
    phone.until("location.hash.startsWith('#/specs/spec')").await?;
    phone.tap_on("As text").await?;
    assert!(phone.value("lines").await?.starts_with("50 ml London dry gin"));
    assert_eq!(phone.wrongs().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn a_spec_is_taken_into_scale_and_found_by_a_few_letters() -> Result<()> {
    let (_serving, phone) = phone_with("").await?;
    phone.open("specs").await?;
    phone.tap_on("Try a demo").await?;
    phone.open("service/scale").await?;
    phone.choose("from_spec", "demo-1/1").await?;
    phone.strip_says("Orchard lantern, stirred: 18 serves").await?;
    assert!(phone.value("spec").await?.contains("20 ml dry vermouth"));
    phone.tap_on("Back").await?;
    phone.until("location.hash === '#/specs/spec?id=demo-1'").await?;
    // In the form that it came from.
    phone.strip_says("as stirred 30 s").await?;
    phone.open("find").await?;
    phone.until("document.activeElement.id === 'search' && document.activeElement.type === 'search'").await?;
    phone.type_in("search", "lantrn").await?;
    phone.strip_says("1 found | 1 spec").await?;
    phone.tap_on("Orchard lantern").await?;
    phone.until("location.hash === '#/specs/spec?id=demo-1'").await?;
    Ok(())
}
