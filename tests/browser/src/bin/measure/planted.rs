//! A book to measure with, written to local storage as the app itself would have.

use std::time::{SystemTime, UNIX_EPOCH};

use anyhow::Result;
use browser::Phone;
use serde_json::{Value, json};

/// The id of its run sheet, its spec and its ingredient.
pub const ID: &str = "measured";

/// Another step of the run sheet than the one whose timer runs: it asks what came out.
pub const STEP_THAT_GIVES: &str = "2/bottle";
/// The key of a step whose wait runs.
pub const STEP_THAT_WAITS: &str = "1/blend";

/// Plants a spec, an ingredient and a run sheet of six preps, due tomorrow, with a timer that has just been started;
/// and loads the page again. A tick counts seconds that have not gone by: the wait is long enough for that.
pub async fn plant(phone: &Phone) -> Result<()> {
    let tomorrow = "const d = new Date(Date.now() + 864e5); return new Date(d - d.getTimezoneOffset() * 6e4).toISOString().slice(0, 16)";
    let ready = phone.run(tomorrow).await?;
    let now = u64::try_from(SystemTime::now().duration_since(UNIX_EPOCH)?.as_millis())?;
    let spec = json!({ "name": "Orchard lantern", "made": now, "forms": [{ "name": "clear",
        "lines": "45 ml pear brandy\n20 ml dry vermouth\nLemon twist", "method": "stirred" }] });
    let own = json!({ "name": "quince liqueur", "like": "liqueur", "strength": "22", "sugar": "250", "made": now });
    let run = json!({ "name": "Friday", "ready": ready, "made": now, "parts": [
            { "key": 0, "tool": "fruit", "texts": { "fruit": "pear", "wanted": "1 l" } },
            { "key": 1, "tool": "clear", "from": 0, "texts": { "juice": "1 l", "fruit": "pear" } },
            { "key": 2, "tool": "cordial", "from": 1, "texts": {} },
            { "key": 3, "tool": "infuse", "texts": { "make": "tincture" } },
            { "key": 4, "tool": "infuse", "texts": { "make": "oleo" } },
            { "key": 5, "tool": "milk-wash", "texts": {} },
        ],
        "marks": { "0/press": { "done": now, "got": "1 l" }, "1/blend": { "started": now } } });
    for (kind, data) in [("spec", spec), ("ingredient", own), ("run", run)] {
        let text = json!(sealed(&data, now));
        phone.run(&format!("localStorage.setItem('meniscus/{kind}/{ID}', {text})")).await?;
    }
    phone.reload().await
}

/// A record as it is stored: behind a checksum of all that follows it.
fn sealed(data: &Value, at: u64) -> String {
    let body = format!("\"v\":3,\"rev\":1,\"at\":{at},\"data\":{data}}}");
    format!("{{\"sum\":\"{:08x}\",{body}", crc32fast::hash(body.as_bytes()))
}
