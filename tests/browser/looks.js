// What a reader would trip over on the page that is open, each function a list of sentences.
window.looks = (() => {
  const all = (selector, within = document) => [...within.querySelectorAll(selector)];
  const words = (element) => (element.textContent || "").trim().replace(/\s+/g, " ").slice(0, 40);
  const name = (element) => {
    const own = element.tagName.toLowerCase();
    const kind = element.getAttribute("class");
    return own + (kind ? "." + kind.trim().split(/\s+/).join(".") : "") + ` "${words(element)}"`;
  };
  const shown = (element) =>
    element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true });
  const hasOwnText = (element) =>
    [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
  const channels = (color) => color.match(/[\d.]+/g).map(Number);
  const light = (color) => {
    const linear = channels(color)
      .slice(0, 3)
      .map((c) => c / 255)
      .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  };
  const ground = (element) => {
    for (; element; element = element.parentElement) {
      const color = getComputedStyle(element).backgroundColor;
      if (channels(color)[3] !== 0) return color;
    }
    return "rgb(255, 255, 255)";
  };
  const colourOf = (element) => {
    const style = getComputedStyle(element);
    return element.closest("svg") ? style.fill : style.color;
  };

  // Every text of the page and its frame, with its contrast to the ground it stands on.
  const contrasts = () => {
    const frame = ".contents a, .contents span, .foot *, .to-emergency, .md-header__topic *";
    return all("article *, " + frame)
      .filter((e) => hasOwnText(e) && !e.matches("title, desc"))
      .map((e) => {
        const [a, b] = [light(colourOf(e)), light(ground(e))];
        return [name(e), (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)];
      });
  };

  const unfold = () => all("details").forEach((fold) => (fold.open = true));

  const pictures = () =>
    [...document.images]
      .filter((image) => !image.complete || !image.naturalWidth)
      .map((image) => `picture does not load: ${image.src}`);

  const sideways = () => {
    const root = document.documentElement;
    const over = root.scrollWidth - root.clientWidth;
    if (over <= 0) return [];
    const wide = all("body *:not(.md-search *)").filter(
      (e) => shown(e) && e.getBoundingClientRect().right > root.clientWidth + 1,
    );
    return [`scrolls sideways by ${over} px: ${wide.slice(0, 3).map(name).join("; ")}`];
  };

  const skipsLevels = () => {
    const faults = [];
    let before = 0;
    for (const heading of all("h1, h2, h3, h4, h5, h6", document.querySelector("main"))) {
      const level = Number(heading.tagName[1]);
      if (level > before + 1) faults.push(`heading skips a level: ${name(heading)}`);
      before = level;
    }
    return faults;
  };

  const structure = () => {
    const faults = skipsLevels();
    if (document.documentElement.lang !== "en") faults.push("the page names no language");
    const mains = all("main, [role=main]").length;
    if (mains !== 1) faults.push(`${mains} main landmarks`);
    const labels = all("nav, [role=navigation]").map((nav) => nav.getAttribute("aria-label") || "");
    if (labels.includes("")) faults.push("a navigation without a label");
    if (new Set(labels).size < labels.length) faults.push(`navigations named alike: ${labels}`);
    for (const table of all("table")) {
      const heads = all("th", table);
      if (!heads.length) faults.push(`table without header cells: ${name(table)}`);
      for (const head of heads) {
        if (!head.hasAttribute("scope")) faults.push(`header cell without scope: ${name(head)}`);
      }
    }
    for (const drawn of all("article svg:not(svg svg):not([aria-hidden=true] *):not([aria-hidden=true])")) {
      const titled = drawn.querySelector(":scope > title") || drawn.getAttribute("aria-label");
      if (drawn.getAttribute("role") !== "img" || !titled) {
        faults.push(`drawing without role and title: ${drawn.outerHTML.slice(0, 80)}`);
      }
    }
    for (const one of all("body [title]")) {
      const said = [one.getAttribute("aria-label"), one.textContent.trim(), one.getAttribute("alt")];
      const labeled = one.htmlFor && document.getElementById(one.htmlFor);
      if (one.tagName === "IFRAME" || (labeled && labeled.ariaLabel)) continue;
      if (!said.includes(one.title)) {
        faults.push(`said by a title alone: ${one.title} on ${name(one)}`);
      }
    }
    for (const one of all("[tabindex]")) {
      if (one.tabIndex > 0) faults.push(`is out of turn for the Tab key: ${name(one)}`);
    }
    return faults;
  };

  // A link alone in its block is aimed at; one among words is read, and so are numbers, each of
  // which has its working's own target on the page.
  const inRunningText = (link) => {
    const block = link.closest("p, li, td, th, dd, dt, figcaption, summary, nav, header, h1, h2, h3");
    if (!block) return false;
    const others = [...block.childNodes].filter((n) => !n.contains(link));
    return others.some((n) => (n.textContent || "").replace(/[\s,;.:]/g, "").length > 0);
  };
  const thumb = 44;
  const targets = () =>
    all("a, button, summary, .md-header label, input:not([type=checkbox]), select")
      .filter((e) => shown(e) && !e.matches("article a.n, .headerlink, .md-skip, .md-search *"))
      .filter((e) => !(e.matches("article a") && inRunningText(e)))
      .map((e) => [e, e.getBoundingClientRect()])
      .filter(([, box]) => box.width && (box.height < thumb - 0.5 || box.width < thumb - 0.5))
      .map(([e, b]) => `target of ${b.width.toFixed()} by ${b.height.toFixed()} px: ${name(e)}`);

  // Text that the box around it cuts off and that no scrolling shows. The bar at the top may cut
  // the page's name: it stands whole in the heading below.
  const clipped = () => {
    const faults = [];
    for (const e of all("article *, .contents *, .foot *, .to-emergency")) {
      if (!hasOwnText(e) || !shown(e)) continue;
      const range = document.createRange();
      range.selectNodeContents(e);
      const box = range.getBoundingClientRect();
      if (!box.width) continue;
      for (let around = e; around && around !== document.body; around = around.parentElement) {
        const style = getComputedStyle(around);
        if (style.clipPath !== "none") break;
        const outer = around.getBoundingClientRect();
        const cutsX = ["hidden", "clip"].includes(style.overflowX) && style.display !== "inline";
        const cutsY = ["hidden", "clip"].includes(style.overflowY) && style.display !== "inline";
        if (cutsX && (box.right > outer.right + 2 || box.left < outer.left - 2)) {
          faults.push(`cut off at the side: ${name(e)} by ${name(around)}`);
        }
        if (cutsY && (box.bottom > outer.bottom + 2 || box.top < outer.top - 2)) {
          faults.push(`cut off above or below: ${name(e)} by ${name(around)}`);
        }
        if (/auto|scroll/.test(style.overflowX + style.overflowY)) break;
      }
    }
    return faults;
  };

  const outOfSight = (element) => {
    for (; element; element = element.parentElement) {
      if (getComputedStyle(element).clipPath !== "none") return true;
    }
    return false;
  };

  // Words of plain letters that are torn though a screen has room for them, and columns of a few
  // letters. A longer word than this, and what is joined by signs, may have to be broken.
  const [longest, fewest] = [11, 4];
  const plainWord = /(?<=^|[\s(])\p{L}+(?=[,.;:?)]*(?:\s|$))/gu;
  const lines = (boxes) => new Set(boxes.filter((b) => b.width).map((b) => Math.round(b.top))).size;
  const crowded = () => {
    const faults = [];
    for (const e of all("article *, .contents *, .foot *, .to-emergency")) {
      if (!hasOwnText(e) || !shown(e) || e.closest("svg") || outOfSight(e)) continue;
      for (const node of [...e.childNodes].filter((n) => n.nodeType === 3)) {
        for (const found of node.data.matchAll(plainWord)) {
          if (found[0].length > longest) continue;
          const range = document.createRange();
          range.setStart(node, found.index);
          range.setEnd(node, found.index + found[0].length);
          if (lines([...range.getClientRects()]) > 1) faults.push(`torn: ${found[0]} in ${name(e)}`);
        }
      }
      const style = getComputedStyle(e);
      const room = e.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight);
      if (style.display === "inline" || room > (fewest * parseFloat(style.fontSize)) / 2) continue;
      const whole = document.createRange();
      whole.selectNodeContents(e);
      if (lines([...whole.getClientRects()]) > e.textContent.trim().split(/[\s-]+/).length) {
        faults.push(`torn to ${room.toFixed()} px: ${name(e)}`);
      }
    }
    return faults;
  };

  // What is aimed at and lies over something else that is; the bar stands over what scrolls below.
  const overlapping = () => {
    const aims = all("a, button, summary, .md-header label, input:not([type=checkbox], [type=radio])")
      .filter((e) => shown(e) && !e.matches(".headerlink, .md-skip, .md-search *") && !outOfSight(e))
      .map((e) => ({
        e, inBar: e.closest(".md-header, .always") !== null, boxes: [...e.getClientRects()],
        top: e.getBoundingClientRect().top, bottom: e.getBoundingClientRect().bottom,
      }))
      .sort((one, other) => one.top - other.top);
    const meet = (a, b, low, high) => Math.min(a[high], b[high]) - Math.max(a[low], b[low]) > 1.5;
    const faults = [];
    aims.forEach((one, turn) => {
      for (const other of aims.slice(turn + 1)) {
        if (other.top >= one.bottom) break;
        if (one.inBar !== other.inBar || one.e.contains(other.e) || other.e.contains(one.e)) continue;
        const over = one.boxes.some((a) =>
          other.boxes.some((b) => meet(a, b, "left", "right") && meet(a, b, "top", "bottom")),
        );
        if (over) faults.push(`lies over another: ${name(one.e)} and ${name(other.e)}`);
      }
    });
    return faults;
  };

  const seconds = (times) => Math.max(...times.split(",").map((t) => parseFloat(t)));
  const pseudos = ["", "::before", "::after", "::details-content", "::placeholder"];
  const motion = () => {
    const faults = [];
    for (const e of all("*")) {
      for (const pseudo of pseudos) {
        const style = getComputedStyle(e, pseudo || null);
        const moves = style.transitionProperty !== "none" ? seconds(style.transitionDuration) : 0;
        const plays = style.animationName !== "none" ? seconds(style.animationDuration) : 0;
        if (moves > 0.01 || plays > 0.01 || style.scrollBehavior === "smooth") {
          faults.push(`moves for ${Math.max(moves, plays)} s: ${name(e)}${pseudo}`);
        }
      }
    }
    return faults;
  };

  // Called with print styles on and the window as wide as the paper between its margins.
  const paper = () => {
    const faults = [];
    const edge = document.documentElement.clientWidth;
    for (const e of all("body *")) {
      const box = e.getBoundingClientRect();
      if (!shown(e) || !box.width || !box.height) continue;
      const style = getComputedStyle(e);
      // what is cut off at the edge of a picture reaches no farther than the picture
      if (e.closest("[clip-path]")) continue;
      if (style.clipPath !== "none" || style.position === "absolute" && box.width <= 1) continue;
      if (box.right > edge + 1 || box.left < -1) faults.push(`past the edge of the paper: ${name(e)}`);
      // a heading that folds away on a screen stays one on paper
      if (e.matches("nav, summary:not(.fold > summary), button, input, .md-header, .to-emergency, .md-skip")) {
        faults.push(`of no use on paper: ${name(e)}`);
      }
      if (hasOwnText(e)) {
        if (light(colourOf(e)) > 0.05) faults.push(`not in black: ${name(e)} ${colourOf(e)}`);
        if (light(ground(e)) < 0.95) faults.push(`not on white: ${name(e)} ${ground(e)}`);
      }
    }
    return faults;
  };

  return {
    all, name, shown, contrasts, unfold, pictures, sideways, structure, targets, clipped, motion,
    paper, crowded, overlapping,
  };
})();
