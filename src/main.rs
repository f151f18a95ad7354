//! Mounts the app, nothing else.

fn main() {
    meniscus::app::start();
}
