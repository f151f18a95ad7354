//! The licences of what is shipped.

use anyhow::Result;
use browser::phone_with;

#[tokio::test]
async fn they_are_a_tap_from_the_shelf_without_a_network_too() -> Result<()> {
    let (serving, phone) = phone_with("").await?;
    phone.open("shelf").await?;
    phone.is_kept().await?;
    drop(serving);
    phone.tap_on("What this app is made of, and its licences").await?;
    phone.until("document.title.startsWith('Licences')").await?;
    let words = phone.words().await?;
    for name in
        ["leptos 0.8", "wasm-bindgen 0.2", "Greg Johnston", "Permission is hereby granted", "UNICODE LICENSE V3"]
    {
        assert!(words.contains(name), "{name}");
    }
    phone.tap_on("Back to Meniscus").await?;
    phone.is_up().await?;
    assert_eq!(phone.run("return location.hash").await?, "#/shelf");
    Ok(())
}
