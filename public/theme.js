// Written into the page, to run before the first paint: the look chosen in Shelf, if one was; the phone's own bar follows it.
{
  const page = document.documentElement;
  const grounds = { slate: "#15191c", paper: "#f6f3ea" };
  const bars = [...document.querySelectorAll("meta[name=theme-color]")].map((bar) => [bar, bar.content]);
  const dress = () => bars.forEach(([bar, own]) => (bar.content = grounds[page.dataset.theme] ?? own));
  new MutationObserver(dress).observe(page, { attributeFilter: ["data-theme"] });
  try {
    const theme = JSON.parse(localStorage.getItem("meniscus/tool/shelf"))?.data?.now?.theme;
    if (theme === "slate" || theme === "paper") page.dataset.theme = theme;
  } catch {
    // Blocked or unreadable: the device's own look stands, and the app says the rest.
  }
}
