// A number's mark leads to its working: opens it, also when it is folded away.
const unfold = () => {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target) return;
  for (let fold = target.closest("details"); fold; fold = fold.parentElement.closest("details")) {
    fold.open = true;
  }
  target.scrollIntoView();
};
addEventListener("hashchange", unfold);
addEventListener("DOMContentLoaded", unfold);
