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
// A press in a lane of a gel draws a band there: its place is typed as by hand, and sent.
const drawBand = (lane) => {
  lane.addEventListener("click", (event) => {
    const field = document.getElementById("y-" + lane.dataset.lane);
    const toFigure = lane.ownerSVGElement.getScreenCTM().inverse();
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(toFigure);
    const { top, corner, scale } = lane.dataset;
    field.value = (Number(top) + (at.y - Number(corner)) / Number(scale)).toFixed(1);
    field.form.requestSubmit(document.getElementById("draw-" + lane.dataset.lane));
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
let lanesAsked = 0;
let lanesWaiting;
const readLanes = async (button) => {
  clearTimeout(lanesWaiting);
  lanesWaiting = undefined;
  const mine = ++lanesAsked;
  const typed = lanesTyped();
  const all = () => new URLSearchParams(new FormData(button.form));
  const body = all();
  const buttons = [...button.form.elements].filter((f) => f.type === "submit");
  buttons.forEach((b) => (b.disabled = true));
  sayOfGel("The gel is read with the lanes as you placed them.");
  const answer = await fetch(button.formAction, { method: "POST", body }).catch(() => undefined);
  const text = await answer?.text();
  while (laneTaken) await new Promise((done) => setTimeout(done, 50));
  if (mine !== lanesAsked) return;
  buttons.forEach((b) => (b.disabled = false));
  if (!answer) {
    sayOfGel("The program cannot be reached; the lanes stay as you placed them in this tab.");
    return;
  }
  const page = new DOMParser().parseFromString(text, "text/html");
  const next = document.adoptNode(page.getElementById("gel-all") ?? page.body);
  if (next.id !== "gel-all") button.form.requestSubmit(button);
  else if (String(body) === String(all())) await showGel(next);
  else if (typed === lanesTyped()) await readLanes(button);
};
const showGel = async (next) => {
  const pictures = [...next.querySelectorAll("image")].map((image) => {
    const picture = new Image();
    picture.src = image.getAttribute("href");
    return picture.decode().catch(() => undefined);
  });
  await Promise.all(pictures);
  const now = document.getElementById("gel-all");
  const { id, dataset } = document.activeElement;
  const focused = id ? "#" + id : dataset.place && `.gel-whole [data-place="${dataset.place}"]`;
  const anchor = (part) => part.querySelector(".gel-whole")?.getBoundingClientRect().top ?? 0;
  const stood = anchor(now);
  const open = [...now.querySelectorAll("details")].map((d) => d.open);
  now.replaceWith(next);
  next.querySelectorAll("details").forEach((d, i) => (d.open ||= open[i]));
  sessionStorage.removeItem("kept " + location.pathname);
  enliven(next);
  enlivenGel();
  if (focused) next.querySelector(focused)?.focus({ preventScroll: true });
  scrollBy(0, anchor(next) - stood);
  const wrong = [...next.querySelectorAll(".lanes .doubt")].map((p) => p.textContent);
  const counts = [...next.querySelectorAll(".count")].map(
    (c) => c.querySelector("strong").textContent + " " + c.querySelector("dt").textContent,
  );
  const read = counts.length > 0 ? counts.join(", ").toLowerCase() : "this pair has no counts";
  sayOfGel(wrong.length > 0 ? wrong.join(" ") : `Read again: ${read}.`);
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
      readLanes(read);
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
    lanesWaiting = setTimeout(() => readLanes(read), 600);
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
    if (isWhole) readLanes(document.getElementById("lanes-read"));
  });
};
// Placings of lanes are undone and done again by the usual keys, wherever nothing is typed.
document.addEventListener("keydown", async (event) => {
  if (!event.ctrlKey && !event.metaKey) return;
  if (event.target.closest("input:not([type=checkbox]),select,textarea")) return;
  const key = event.key.toLowerCase();
  const isForth = key === "y" || (key === "z" && event.shiftKey);
  const step = () => document.getElementById(isForth ? "lanes-forth" : "lanes-back");
  if ((!step() && !lanesWaiting) || (!isForth && key !== "z")) return;
  event.preventDefault();
  // What was moved a moment ago is a step of its own.
  if (lanesWaiting) await readLanes(document.getElementById("lanes-read"));
  if (step()) readLanes(step());
});
const enlivenGel = () => {
  const all = (what, then) => document.querySelectorAll(what).forEach(then);
  all("select[name=added]", (choice) => choice.addEventListener("input", join));
  all("input[name=keep]", keepBand);
  all("[data-lane]", drawBand);
  if (!document.querySelector(".lanes")) return;
  all("svg.gel-whole", (figure) => figure.setAttribute("role", "group"));
  all("[data-place]", dragLane);
  all(".lanes [name]", typeLane);
  all(".lanes button", (button) =>
    button.addEventListener("click", (event) => {
      event.preventDefault();
      readLanes(button);
    }),
  );
};
enlivenGel();
