// Before the first paint: the look chosen in Shelf, if one was.
try {
  const shelf = JSON.parse(localStorage.getItem("meniscus/tool/shelf"));
  const theme = shelf?.data?.now?.theme;
  if (theme === "slate" || theme === "paper") document.documentElement.dataset.theme = theme;
} catch {
  // Blocked or unreadable: the device's own look stands, and the app says the rest.
}
