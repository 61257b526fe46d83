"use strict";
// Keeps what is typed in a form with data-keep in this tab until the program has it, and shows at
// once what the program makes of it. Nothing is sent anywhere else.
// What another person typed in this tab is not this one's.
const person = document.body.dataset.person;
if (person && sessionStorage.getItem("person") !== person) {
  sessionStorage.clear();
  sessionStorage.setItem("person", person);
}
// What is made of typing goes where it is read: each part that names a place goes there. What says
// the same as before stays, with its focus.
const show = (target, text) => {
  const answer = document.createElement("template");
  answer.innerHTML = text;
  for (const part of answer.content.querySelectorAll("[data-at]")) {
    const place = document.getElementById(part.dataset.at);
    if (!place || place.innerHTML === part.innerHTML) continue;
    const more = place.closest(".more");
    if (more) more.hidden = !part.hasChildNodes();
    place.replaceChildren(...part.childNodes);
  }
  const unasked = answer.content.querySelector(".unasked")?.dataset.keys.split(" ");
  for (const field of unasked ? document.querySelectorAll("[data-field]") : []) {
    field.hidden = unasked.includes(field.dataset.field);
  }
  answer.content.querySelector(".live")?.remove();
  target.replaceChildren(answer.content);
};
const keepTyped = (form) => {
  const key = "kept " + form.dataset.keep;
  const fields = [...form.elements].filter(
    (f) => f.name && f.type !== "hidden" && f.dataset.unkept === undefined,
  );
  const isPressed = (f) => f.type === "checkbox" || f.type === "radio";
  const typed = () => fields.map((f) => (isPressed(f) ? f.checked : f.value));
  const began = JSON.stringify(typed());
  const kept = sessionStorage.getItem(key);
  if (form.dataset.saved === "yes") {
    sessionStorage.removeItem(key);
  } else if (kept && kept !== began && JSON.parse(kept).length === fields.length) {
    const values = JSON.parse(kept);
    fields.forEach((f, i) => {
      if (JSON.stringify(typed()[i]) === JSON.stringify(values[i])) return;
      if (isPressed(f)) f.checked = values[i] === true;
      else if (values[i] !== undefined) f.value = values[i];
      for (let fold = f.closest("details"); fold; fold = fold.parentElement.closest("details")) {
        fold.open = true;
      }
    });
    const note = document.createElement("p");
    note.className = "kept";
    note.setAttribute("role", "status");
    note.append("What you typed here before was not saved; it stands in the form again. ");
    const undo = document.createElement("button");
    undo.type = "button";
    undo.className = "plain";
    undo.textContent = "Undo";
    undo.addEventListener("click", () => {
      sessionStorage.removeItem(key);
      location.reload();
    });
    note.append(undo);
    form.prepend(note);
  }
  let waiting;
  const look = async () => {
    const target = document.getElementById(form.dataset.look);
    if (!target) return;
    try {
      const answer = await fetch(form.dataset.lookAt, {
        method: "POST",
        body: new URLSearchParams(new FormData(form)),
        redirect: "manual",
      });
      if (answer.ok) show(target, await answer.text());
    } catch {
      target.textContent = "The program cannot be reached; what you type stays in this tab.";
    }
  };
  form.addEventListener("input", () => {
    sessionStorage.setItem(key, JSON.stringify(typed()));
    clearTimeout(waiting);
    waiting = setTimeout(look, form.dataset.lookNow ? 0 : 60);
  });
  // A row unfolds in place: what it shows is made of what stands in the fields.
  form.addEventListener("click", (event) => {
    const row = event.target.closest(".unfolds");
    if (!row) return;
    event.preventDefault();
    const field = form.elements.unfolded;
    const rows = new Set(field.value.split(" ").filter(Boolean));
    if (!rows.delete(row.value)) rows.add(row.value);
    field.value = [...rows].join(" ");
    row.setAttribute("aria-expanded", rows.has(row.value));
    look();
  });
};
// None of a block is so: what is not answered with yes is answered with no; pressed again, it is as
// it was. Nothing is saved yet.
const noneOf = (button) => {
  const words = button.textContent;
  let before = [];
  button.addEventListener("click", (event) => {
    event.preventDefault();
    const questions = [...button.closest("fieldset").querySelectorAll(".asked")].filter(
      (q) => !q.hidden && q.dataset.alone === undefined && !q.querySelector("[value=yes]").checked,
    );
    const isBack = before.length > 0;
    if (isBack) before.forEach((radio) => (radio.checked = true));
    before = isBack ? [] : questions.map((q) => q.querySelector(":checked"));
    if (!isBack) questions.forEach((q) => (q.querySelector("[value=no]").checked = true));
    button.textContent = isBack ? words : "Undo: as it was";
    button.dispatchEvent(new Event("input", { bubbles: true }));
  });
};
for (const form of document.querySelectorAll("form[action='/sign-out']")) {
  form.addEventListener("submit", () => sessionStorage.clear());
}
// What is undone on the page is undone in this tab too.
const dropTyped = (form) => {
  const key = "kept " + form.getAttribute("action").slice(0, -"/drop".length);
  form.addEventListener("submit", () => sessionStorage.removeItem(key));
};
// A chosen file is read here and put into its field, where it can be seen before it is sent.
for (const chooser of document.querySelectorAll("input[data-into]")) {
  chooser.addEventListener("change", async () => {
    const file = chooser.files[0];
    const field = document.getElementById(chooser.dataset.into);
    if (file && field) field.value = file.size > 1048576 ? "" : await file.text();
  });
}
// A file that is too large is named beside its field, before it is sent.
const nameTooLarge = (chooser) => {
  const said = document.createElement("p");
  said.className = "doubt";
  said.setAttribute("role", "alert");
  chooser.after(said);
  const isTooLarge = () => (chooser.files[0]?.size ?? 0) > Number(chooser.dataset.most);
  const say = () => {
    said.textContent = isTooLarge() ? chooser.dataset.tooLarge : "";
  };
  chooser.addEventListener("change", say);
  chooser.form.addEventListener("submit", (event) => {
    say();
    if (isTooLarge()) event.preventDefault();
  });
};
// Keys, shown on request; those without Ctrl can be switched off there, in this browser.
const keys = document.getElementById("keys");
if (keys) {
  const on = document.getElementById("keys-on");
  const button = document.getElementById("keys-button");
  on.checked = localStorage.getItem("keys") !== "off";
  on.addEventListener("change", () => localStorage.setItem("keys", on.checked ? "on" : "off"));
  const turn = () => (keys.open ? keys.close() : keys.showModal());
  button.hidden = false;
  button.addEventListener("click", turn);
  document.getElementById("keys-close").addEventListener("click", turn);
  const steps = [...document.querySelectorAll(".journey li")];
  const place = (end) => document.querySelector(`.journey a[href$="${end}"]`)?.href;
  const places = {
    d: () => document.querySelector("a[href='/day']")?.href,
    c: () => document.querySelector("a[href='/cases']")?.href,
    w: () => steps[0]?.querySelector("a")?.href,
    s: () => place("/says"),
    r: () => place("/report"),
  };
  let went = 0;
  document.addEventListener("keydown", (event) => {
    const field = event.target.closest("input:not([type=checkbox]),select,textarea");
    if (event.key === "Enter" && event.ctrlKey && event.target.form) {
      event.target.form.requestSubmit();
    } else if (!field && on.checked && !event.ctrlKey && !event.altKey && !event.metaKey) {
      const isGoing = Date.now() - went < 1500;
      went = event.key === "g" ? Date.now() : 0;
      const step = steps[Number(event.key)]?.querySelector("a")?.href;
      const to = isGoing ? (places[event.key]?.() ?? (/[1-9]/.test(event.key) && step)) : "";
      if (event.key === "?") turn();
      else if (to) location.href = to;
    }
  });
}
// A page of which the program is still reading a part asks for it, and keeps its focus.
const renew = () => {
  const waiting = document.querySelector("[data-renew]");
  if (!waiting) return;
  setTimeout(async () => {
    const answer = await fetch(location.href, { redirect: "manual" }).catch(() => undefined);
    if (answer?.type === "opaqueredirect") return;
    if (answer?.ok) {
      const next = new DOMParser().parseFromString(await answer.text(), "text/html");
      const now = document.getElementById("renewed");
      const focused = now.contains(document.activeElement) && document.activeElement.href;
      now.replaceWith(next.getElementById("renewed"));
      const links = [...document.querySelectorAll("#renewed a")];
      if (focused) links.find((a) => a.href === focused)?.focus();
    }
    renew();
  }, Number(waiting.dataset.renew) * 1000);
};
renew();
// What unfolds is printed unfolded.
addEventListener("beforeprint", () => {
  document.querySelectorAll("main details").forEach((d) => (d.open = true));
});
// What a laboratory sent is dropped or pasted anywhere on the page, and shown before it is taken.
const sending = document.querySelector("form[data-drop]");
if (sending) {
  const file = sending.querySelector("input[type=file]");
  const text = sending.querySelector("textarea");
  const send = (files, words) => {
    if (files?.length) file.files = files;
    else if (words.trim()) text.value = words;
    else return false;
    sending.requestSubmit();
    return true;
  };
  addEventListener("dragover", (event) => event.preventDefault());
  addEventListener("drop", (event) => {
    if (event.target.closest("input,textarea")) return;
    event.preventDefault();
    send(event.dataTransfer.files, event.dataTransfer.getData("text"));
  });
  addEventListener("paste", (event) => {
    const typing = event.target.closest("input,textarea");
    const words = event.clipboardData.getData("text");
    const isBlock = event.clipboardData.files.length > 0 || /[\n\t]/.test(words.trim());
    if (typing === text || (typing && !isBlock)) return;
    if (send(event.clipboardData.files, words)) event.preventDefault();
  });
}
// A time is noted as of now, in the clinic's own time.
for (const field of document.querySelectorAll("form[data-zone] input[type=datetime-local]")) {
  const now = document.createElement("button");
  now.type = "button";
  now.className = "plain now";
  now.textContent = "now";
  now.setAttribute("aria-label", "now: " + (field.labels[0]?.textContent ?? ""));
  now.addEventListener("click", () => {
    const zone = { timeZone: field.form.dataset.zone, hourCycle: "h23" };
    const shape = { dateStyle: "short", timeStyle: "short" };
    const words = new Intl.DateTimeFormat("sv-SE", { ...zone, ...shape }).format(new Date());
    field.value = words.replace(" ", "T").slice(0, 16);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
  field.after(now);
}
// A text is copied as it stands.
for (const button of document.querySelectorAll("[data-copy]")) {
  button.hidden = false;
  button.addEventListener("click", async () => {
    const text = document.getElementById(button.dataset.copy).textContent;
    try {
      await navigator.clipboard.writeText(text);
      button.textContent = "Copied";
    } catch {
      getSelection().selectAllChildren(document.getElementById(button.dataset.copy));
      button.textContent = "Selected: copy it with Ctrl C";
    }
  });
}
// Numbers of a "what if" are turned by sliders: what they would say is shown, and kept nowhere.
for (const form of document.querySelectorAll("form[data-what-if]")) {
  const target = document.getElementById(form.dataset.whatIf);
  let waiting;
  let asked = 0;
  const ask = async () => {
    const mine = ++asked;
    const body = new URLSearchParams(new FormData(form));
    const to = form.getAttribute("action") + "/look";
    const answer = await fetch(to, { method: "POST", body, redirect: "manual" }).catch(() => null);
    if (mine !== asked) return;
    if (answer?.ok) show(target, await answer.text());
    else target.textContent = "This page is no longer the case as it stands: load it again.";
  };
  for (const field of form.querySelectorAll("input[data-step]")) {
    const slider = document.createElement("input");
    const { from: min, to: max, step } = field.dataset;
    Object.assign(slider, { type: "range", min, max, step, value: field.value });
    slider.setAttribute("aria-label", "Slider: " + field.labels[0].textContent);
    slider.addEventListener("input", () => {
      field.value = slider.value;
    });
    field.addEventListener("input", () => {
      slider.value = field.value.replace(",", ".");
    });
    field.after(slider);
  }
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(ask, 60);
  });
}
// A form that takes its time says so.
const sayBusy = (form) => {
  form.addEventListener("submit", (event) => {
    if (event.defaultPrevented) return;
    const said = document.createElement("p");
    said.className = "kept";
    said.setAttribute("role", "status");
    said.textContent = form.dataset.busy;
    form.append(said);
  });
};
// What a page holds from the start, and what takes the place of a part of it.
const enliven = (part) => {
  part.querySelectorAll("form[data-keep]").forEach(keepTyped);
  part.querySelectorAll("form[action$='/drop']").forEach(dropTyped);
  part.querySelectorAll("input[data-most]").forEach(nameTooLarge);
  part.querySelectorAll("form[data-busy]").forEach(sayBusy);
  part.querySelectorAll("button[name=none]").forEach(noneOf);
};
enliven(document);
