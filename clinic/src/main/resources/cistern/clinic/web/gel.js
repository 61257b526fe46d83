// A line joins two bands of a gel that are kept; that of an added band also when it is chosen.
const join = () => {
  const chosen = (one, other) =>
    document.getElementById("shared-" + one)?.value.split("@")[2] === other.split("-")[1];
  const isAdded = (band) => document.getElementById("shared-" + band) !== null;
  document.querySelectorAll("[data-joins]").forEach((line) => {
    const [one, other] = line.dataset.joins.split(" ");
    const isKept = [one, other].every((k) => document.getElementById("keep-" + k)?.checked);
    const isFree = !isAdded(one) && !isAdded(other);
    const isJoined = isFree || chosen(one, other) || chosen(other, one);
    line.classList.toggle("struck", !isKept || !isJoined);
  });
};
// A mark on the picture of a gel keeps or strikes its band, and shows what its field says.
const keepBand = (box) => {
  const marks = document.querySelectorAll(`[data-band="${box.value}"]`);
  const show = () => {
    marks.forEach((m) => m.classList.toggle("struck", !box.checked));
    join();
  };
  box.addEventListener("input", show);
  box.addEventListener("focus", () => marks.forEach((m) => m.classList.add("here")));
  box.addEventListener("blur", () => marks.forEach((m) => m.classList.remove("here")));
  marks.forEach((m) => m.addEventListener("click", () => box.click()));
  show();
};
// A press in a lane of a gel draws a band there: its place is typed as by hand, and sent. What is
// being read first stays.
const drawBand = (lane) => {
  lane.addEventListener("click", async (event) => {
    const toFigure = lane.ownerSVGElement.getScreenCTM().inverse();
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(toFigure);
    const { top, corner, scale } = lane.dataset;
    const place = (Number(top) + (at.y - Number(corner)) / Number(scale)).toFixed(1);
    await gelRead;
    document.getElementById("y-" + lane.dataset.lane).value = place;
    readGel(document.getElementById("draw-" + lane.dataset.lane));
  });
};
// Lanes are dragged on the picture or moved by keys: their fields say where they are, and the gel
// is read again at once. What is shown then takes the place of what was.
const laneField = (name, lane) => document.getElementById(`lane-${name}-${lane}`);
const laneNumber = (field) => Number(field.value.replace(",", "."));
const lanesTyped = () => [...document.querySelectorAll(".lanes [name]")].map((f) => f.value).join();
const sayOfGel = (words) => {
  document.querySelectorAll("#gel-said,.lanes-said").forEach((p) => (p.textContent = words));
};
let laneTaken;
let gelAsked = 0;
let lanesWaiting;
let gelRead = Promise.resolve();
// The form is sent by one of its buttons, and its answer shown without the page being left.
const readGel = (button) => (gelRead = sendGel(button));
const isDrawing = (button) => button.id.startsWith("draw-");
const sendGel = async (button) => {
  clearTimeout(lanesWaiting);
  lanesWaiting = undefined;
  const mine = ++gelAsked;
  const typed = lanesTyped();
  const all = () => new URLSearchParams(new FormData(button.form));
  const body = all();
  const buttons = [...button.form.elements].filter((f) => f.type === "submit");
  buttons.forEach((b) => (b.disabled = true));
  sayOfGel(isDrawing(button) ? "" : "The gel is read with the lanes as you placed them.");
  const text = await fetch(button.formAction, { method: "POST", body })
    .then((answer) => answer.text())
    .catch(() => undefined);
  while (laneTaken) await new Promise((done) => setTimeout(done, 50));
  if (mine !== gelAsked) return;
  buttons.forEach((b) => (b.disabled = false));
  if (text === undefined) {
    sayOfGel("The program cannot be reached; the lanes stay as you placed them in this tab.");
    return;
  }
  const page = new DOMParser().parseFromString(text, "text/html");
  const next = document.adoptNode(page.getElementById("gel-all") ?? page.body);
  if (next.id !== "gel-all") button.form.requestSubmit(button);
  else if (String(body) === String(all())) await showGel(next, isDrawing(button));
  else if (typed === lanesTyped()) await sendGel(button);
};
const showGel = async (next, isDrawn) => {
  const pictures = [...next.querySelectorAll("image")].map((image) => {
    const picture = new Image();
    picture.src = image.getAttribute("href");
    return picture.decode().catch(() => undefined);
  });
  await Promise.all(pictures);
  const now = document.getElementById("gel-all");
  const boxes = (part) => [...part.querySelectorAll("[name=keep]")].map((box) => box.id);
  const before = boxes(now);
  const drawn = isDrawn && boxes(next).find((box) => !before.includes(box));
  const id = drawn || document.activeElement.id;
  const { place } = document.activeElement.dataset;
  const focused = id ? "#" + id : place && `.gel-whole [data-place="${place}"]`;
  const figure = isDrawn ? ".gel-frame" : ".gel-whole";
  const anchor = (part) => part.querySelector(figure)?.getBoundingClientRect().top ?? 0;
  const stood = anchor(now);
  const open = [...now.querySelectorAll("details")].map((d) => d.open);
  now.replaceWith(next);
  next.querySelectorAll("details").forEach((d, i) => (d.open ||= open[i]));
  sessionStorage.removeItem("kept " + location.pathname);
  enliven(next);
  enlivenGel();
  if (focused) next.querySelector(focused)?.focus({ preventScroll: true });
  scrollBy(0, anchor(next) - stood);
  const wrong = [...next.querySelectorAll(".lanes .doubt,.drawing .doubt")].map(
    (p) => p.textContent,
  );
  const counts = [...next.querySelectorAll(".count")].map(
    (c) => c.querySelector("strong").textContent + " " + c.querySelector("dt").textContent,
  );
  const read = counts.length > 0 ? counts.join(", ").toLowerCase() : "this pair has no counts";
  const done = isDrawn ? "Drawn" : "Read again";
  sayOfGel(wrong.length > 0 ? wrong.join(" ") : `${done}: ${read}.`);
};
// Two lanes become a pair. The number of this person's pair stays, else that of the dragged one;
// the lane that is left over takes the place of the one that came.
const pairLanes = (one, other) => {
  const pair = (lane) => laneField("pair", lane);
  const kind = (lane) => laneField("kind", lane);
  const isSample = (lane) => ["csf", "serum"].includes(kind(lane).value);
  const beside = (lane) => (kind(lane).value === "csf" ? "serum" : "csf");
  const isOwn = pair(other).value === document.getElementById("lanes-own").value;
  const [stays, comes] = isOwn ? [other, one] : [one, other];
  const rows = [...document.querySelectorAll("[name=lane-pair]")].map((_, lane) => lane);
  const others = rows.filter((lane) => lane !== stays && lane !== comes && isSample(lane));
  const free = pair(comes).value;
  const left = others.find((lane) => pair(lane).value === pair(stays).value);
  const lonely = others.find((lane) => lane !== left && pair(lane).value === free);
  if (!isSample(stays)) kind(stays).value = isSample(comes) ? beside(comes) : "csf";
  if (!isSample(comes) || kind(comes).value === kind(stays).value) kind(comes).value = beside(stays);
  if (left !== undefined) pair(left).value = free;
  if (left !== undefined && lonely !== undefined) kind(left).value = beside(lonely);
  pair(stays).value ||= free || String(rows.length);
  pair(comes).value = pair(stays).value;
};
const dragLane = (group) => {
  const lane = Number(group.dataset.place);
  const [x, width] = [laneField("x", lane), laneField("width", lane)];
  const scale = Number(group.ownerSVGElement.dataset.scale);
  const read = document.getElementById("lanes-read");
  const began = { x: laneNumber(x), width: laneNumber(width) };
  const edges = [...group.querySelectorAll("line")];
  const grab = group.querySelector(".grab");
  const corners = grab?.getAttribute("points").split(" ").map((p) => p.split(",").map(Number));
  const shift = (part, by) => part?.setAttribute("transform", `translate(${by})`);
  const show = () => {
    const middle = (laneNumber(x) - began.x) * scale;
    const wider = ((laneNumber(width) - began.width) * scale) / 2;
    edges.forEach((edge, i) => shift(edge, i % 2 === 0 ? middle - wider : middle + wider));
    shift(group.querySelector(".lane-head"), middle);
    const by = [middle - wider, middle + wider, middle + wider, middle - wider];
    grab?.setAttribute("points", corners.map(([a, b], i) => `${a + by[i]},${b}`).join(" "));
    group.setAttribute("aria-valuenow", x.value);
    group.setAttribute("aria-valuetext", `centre ${x.value}, width ${width.value} pixels`);
  };
  const put = (middle, wide) => {
    x.value = Math.max(0, middle).toFixed(1);
    width.value = Math.max(2, wide).toFixed(1);
    show();
  };
  group.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    const edge = Number(event.target.dataset.edge ?? 0);
    const isHead = event.target.closest(".lane-head") !== null;
    const start = { at: event.clientX, x: laneNumber(x), width: laneNumber(width) };
    const pixel = group.ownerSVGElement.getScreenCTM().a * scale;
    laneTaken = group;
    group.setPointerCapture(event.pointerId);
    const move = (to) => {
      const by = (to.clientX - start.at) / pixel;
      const wide = Math.max(2, start.width + edge * by);
      if (edge) put(start.x + (edge * (wide - start.width)) / 2, wide);
      else put(start.x + by, start.width);
    };
    const end = (to) => {
      laneTaken = undefined;
      group.removeEventListener("pointermove", move);
      const heads = document.elementsFromPoint(to.clientX, to.clientY);
      const on = heads.map((e) => e.closest(".lane-head")?.parentElement);
      const other = on.find((g) => g && g !== group && g.ownerSVGElement === group.ownerSVGElement);
      const isMoved = Math.abs(to.clientX - start.at) > 2;
      if (to.type === "pointercancel" || !isMoved || (isHead && other)) put(start.x, start.width);
      if (to.type === "pointercancel" || !isMoved) return;
      if (isHead && other) pairLanes(lane, Number(other.dataset.place));
      readGel(read);
    };
    group.addEventListener("pointermove", move);
    group.addEventListener("pointerup", end, { once: true });
    group.addEventListener("pointercancel", end, { once: true });
  });
  if (!grab) return;
  group.setAttribute("tabindex", "0");
  group.setAttribute("role", "slider");
  group.setAttribute("aria-label", group.dataset.name);
  group.setAttribute("aria-valuemin", "0");
  group.addEventListener("keydown", (event) => {
    const step = event.shiftKey ? 10 : 1;
    const steps = { ArrowLeft: [-step, 0], ArrowRight: [step, 0] };
    Object.assign(steps, { ArrowUp: [0, step], ArrowDown: [0, -step] });
    const by = steps[event.key];
    if (!by || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    put(laneNumber(x) + by[0], laneNumber(width) + by[1]);
    clearTimeout(lanesWaiting);
    lanesWaiting = setTimeout(() => readGel(read), 600);
  });
  show();
};
// A lane that is said whole in its fields is read at once as well.
const typeLane = (field) => {
  field.addEventListener("change", () => {
    const lane = field.id.match(/\d+$/)?.[0];
    const [kind, ...numbers] = ["kind", "pair", "x", "width"].map((n) => laneField(n, lane)?.value);
    const isSample = ["csf", "serum"].includes(kind);
    const isWhole = kind === "none" || numbers.slice(isSample ? 0 : 1).every((n) => n !== "");
    if (isWhole) readGel(document.getElementById("lanes-read"));
  });
};
// Placings of lanes are undone and done again by the usual keys, wherever nothing is typed.
document.addEventListener("keydown", async (event) => {
  if (!event.ctrlKey && !event.metaKey) return;
  if (event.target.closest("input:not([type=checkbox]),select,textarea")) return;
  const key = event.key.toLowerCase();
  const isForth = key === "y" || (key === "z" && event.shiftKey);
  const step = () => document.getElementById(isForth ? "lanes-forth" : "lanes-back");
  const isRead = document.querySelector(".lanes button:disabled") === null;
  if ((!step() && !lanesWaiting && isRead) || (!isForth && key !== "z")) return;
  event.preventDefault();
  // What was moved a moment ago is a step of its own, and so is what is still being read.
  if (lanesWaiting) readGel(document.getElementById("lanes-read"));
  await gelRead;
  if (step()) readGel(step());
});
// How the picture of a pair is seen: by this person in this tab, and no part of the case.
const VIEW = "gel view " + location.pathname;
const AS_IT_WAS = { zoom: 1, contrast: 100, brightness: 100, invert: false, left: 0, top: 0 };
const gelView = () => ({ ...AS_IT_WAS, ...JSON.parse(sessionStorage.getItem(VIEW) ?? "{}") });
const keepView = (change) => {
  sessionStorage.setItem(VIEW, JSON.stringify({ ...gelView(), ...change }));
};
const showView = () => {
  const frame = document.querySelector(".gel-frame");
  const svg = frame?.querySelector("svg");
  if (!svg?.getScreenCTM()) return;
  const view = gelView();
  frame.classList.remove("larger");
  frame.style.height = svg.style.width = "";
  const fit = svg.getScreenCTM().a;
  const { height } = svg.getBoundingClientRect();
  if (view.zoom > 1) {
    frame.classList.add("larger");
    frame.style.height = height + "px";
    svg.style.width = svg.viewBox.baseVal.width * fit * view.zoom + "px";
  }
  svg.style.setProperty("--zoom", Math.max(1, fit * view.zoom));
  for (const name of ["contrast", "brightness"]) {
    svg.style.setProperty("--" + name, view[name] / 100);
    document.getElementById("gel-" + name).value = view[name];
  }
  svg.style.setProperty("--invert", view.invert ? 1 : 0);
  document.getElementById("gel-invert").setAttribute("aria-pressed", view.invert);
  document.getElementById("gel-zoom").textContent = Math.round(view.zoom * 100) + " %";
  frame.scrollTo(view.left, view.top);
};
// What lies under a spot of the frame, its middle if none is told, stays there.
const zoomGel = (factor, spot) => {
  const frame = document.querySelector(".gel-frame");
  const old = gelView();
  const zoom = Math.min(8, Math.max(1, old.zoom * factor));
  const box = frame.getBoundingClientRect();
  const x = spot ? spot.clientX - box.left : box.width / 2;
  const y = spot ? spot.clientY - box.top : box.height / 2;
  const by = zoom / old.zoom;
  const left = Math.max(0, (frame.scrollLeft + x) * by - x);
  const top = Math.max(0, (frame.scrollTop + y) * by - y);
  keepView({ zoom, left, top });
  showView();
};
const changeView = (change) => {
  keepView(change);
  showView();
};
const clearer = (by) =>
  changeView({ contrast: Math.min(400, Math.max(40, gelView().contrast + by)) });
const invertGel = () => changeView({ invert: !gelView().invert });
const VIEW_KEYS = {
  "+": () => zoomGel(1.5),
  "=": () => zoomGel(1.5),
  "-": () => zoomGel(1 / 1.5),
  0: () => changeView(AS_IT_WAS),
  ".": () => clearer(20),
  ",": () => clearer(-20),
  i: invertGel,
};
const enlivenView = (tools) => {
  tools.hidden = false;
  const on = (what, kind, then) => tools.querySelector(what).addEventListener(kind, then);
  on("[data-zoom=in]", "click", () => zoomGel(1.5));
  on("[data-zoom=out]", "click", () => zoomGel(1 / 1.5));
  on("#gel-invert", "click", invertGel);
  on("#gel-as-it-was", "click", () => changeView(AS_IT_WAS));
  tools.querySelectorAll("[data-filter]").forEach((slider) => {
    slider.addEventListener("input", () =>
      changeView({ [slider.dataset.filter]: Number(slider.value) }),
    );
  });
  const frame = document.querySelector(".gel-frame");
  frame.addEventListener("scroll", () =>
    keepView({ left: frame.scrollLeft, top: frame.scrollTop }),
  );
  const turn = (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoomGel(Math.exp(-event.deltaY / 300), event);
  };
  frame.addEventListener("wheel", turn, { passive: false });
  showView();
};
// Up and down lead from band to band; a key without Ctrl changes how the picture is seen.
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || !document.querySelector(".gel-view")) return;
  if (event.target.name === "keep") {
    const all = [...document.querySelectorAll("input[name=keep]")];
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step) all[all.indexOf(event.target) + step]?.focus();
    if (step || event.key === "Enter") event.preventDefault();
  }
  const isTyping = event.target.closest(
    "input:not([type=checkbox],[type=range]),select,textarea,dialog",
  );
  const isOff = localStorage.getItem("keys") === "off";
  if (!isTyping && !isOff) VIEW_KEYS[event.key]?.();
});
addEventListener("resize", showView);
const readByButton = (button) => {
  button.addEventListener("click", (event) => {
    event.preventDefault();
    readGel(button);
  });
};
const enlivenGel = () => {
  const all = (what, then) => document.querySelectorAll(what).forEach(then);
  all("select[name=added]", (choice) => choice.addEventListener("input", join));
  all("input[name=keep]", keepBand);
  all("[data-lane]", drawBand);
  all(".gel-view", enlivenView);
  all("[id^=draw-]", readByButton);
  if (!document.querySelector(".lanes")) return;
  all("svg.gel-whole", (figure) => figure.setAttribute("role", "group"));
  all("[data-place]", dragLane);
  all(".lanes [name]", typeLane);
  all(".lanes button", readByButton);
};
enlivenGel();
