// Runs twice before the first paint: in the head it sets the light view, so that a dim page
// never flashes white; at the end of the body it shows the owner's own last page, if there is one.
(function () {
  var root = document.documentElement;
  var page = document.getElementById("page");
  function stored(key) {
    try {
      return JSON.parse(localStorage.getItem("ohmward." + key));
    } catch {
      return null; // storage is off, or what it holds was cut short
    }
  }
  var last = stored("page");
  if (!page) {
    var settings = stored("settings") || {};
    if (settings.view) root.dataset.view = settings.view;
    if (settings.hand) root.dataset.hand = settings.hand;
    if (settings.extra_dim) root.dataset.extra = settings.extra_dim;
    if (last) root.dataset.own = ""; // hides the first-visit page until the second run below
    return;
  }
  if (!last) return;
  document.getElementById("strip").innerHTML = last.strip;
  document.getElementById("rail").innerHTML = last.rail;
  // Another address was asked for: an empty page that says so is honest, the wrong page is not.
  page.innerHTML = !location.hash || location.hash === last.route ? last.page : "";
  delete root.dataset.own;
})();
