// On a host this keeps the book on the device, so that it is read without signal, and says below each
// page what is kept. A newer book is offered and shown when it is asked for. From a folder nothing is
// asked for.
const bookRoot = new URL("..", document.currentScript.src);

const footLine = (words) => {
  const foot = document.querySelector(".foot");
  const line = foot.querySelector(".kept") ?? foot.appendChild(document.createElement("p"));
  line.className = "kept";
  line.textContent = words;
};

const bookOf = (worker) =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage("book", [port2]);
  });

const sayKept = async (worker) => {
  const { asOf, pages } = await bookOf(worker);
  footLine(`Stored on this device, as of ${asOf}, ${pages} ${pages === 1 ? "page" : "pages"}.`);
};

const offer = async (worker) => {
  const { asOf } = await bookOf(worker);
  const line = document.querySelector(".newer") ?? document.createElement("p");
  const button = document.createElement("button");
  line.className = "newer";
  button.textContent = "show it";
  line.replaceChildren(`A newer book is here, as of ${asOf}: `, button);
  button.addEventListener("click", () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
    worker.postMessage("show");
  });
  document.querySelector(".md-content__inner").prepend(line);
};

const watch = (registration, coming) => {
  coming.addEventListener("statechange", () => {
    const { active } = registration;
    if (coming.state === "activated") sayKept(coming);
    else if (coming.state === "installed" && active) offer(coming);
    else if (coming.state === "redundant" && !active) footLine("Not stored on this device: it was not whole. Open it again.");
  });
};

const keepBook = async () => {
  const link = document.head.appendChild(document.createElement("link"));
  link.crossOrigin = "use-credentials";
  link.rel = "manifest";
  link.href = new URL("handbook.webmanifest", bookRoot);
  if (!navigator.serviceWorker) {
    footLine("Not stored on this device: its browser does so at addresses with https alone.");
    return;
  }
  const registration = await navigator.serviceWorker.register(new URL("service-worker.js", bookRoot));
  const { installing, waiting, active } = registration;
  if (active) sayKept(active);
  else footLine("Being stored on this device. Until then it needs signal.");
  if (active && waiting) offer(waiting);
  if (installing) watch(registration, installing);
  registration.addEventListener("updatefound", () => watch(registration, registration.installing));
  // what was installed may stay for as long as its owner likes; a page in passing asks for nothing
  if (matchMedia("(display-mode: standalone), (display-mode: minimal-ui)").matches) {
    await navigator.storage.persist();
  }
};

addEventListener("load", () => {
  // a preview, which puts its own script into the page, is never kept
  if (!location.protocol.startsWith("http") || document.querySelector("script[data-version]")) return;
  keepBook().catch(() => footLine("Not stored on this device: it needs signal."));
});
