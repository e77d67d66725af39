// Elements made in one call: h("p", {class: "hint"}, "text", child).
export function h(tag, props = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (name in made && name !== "list" && name !== "form") made[name] = value;
    else made.setAttribute(name === "className" ? "class" : name, value === true ? "" : value);
  }
  made.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return made;
}

export const capital = (text) => text.slice(0, 1).toUpperCase() + text.slice(1);

export const find = (id) => document.getElementById(id);

// A drawing that the server made: its text is escaped there.
export function drawing(text, label) {
  const holder = h("div", { className: "drawing" });
  holder.innerHTML = text;
  holder.firstElementChild.setAttribute("aria-label", label);
  return holder;
}

export function notice(message, { words, act } = {}) {
  message = /^[a-z]+ /.test(message) ? capital(message) : message; // a file's name stays as it is
  const bar = find("notice");
  bar.hidden = !message;
  const button = (name, onclick) => h("button", { type: "button", onclick }, name);
  bar.replaceChildren(...(message ? [message, " ", words ? button(words, act) : "", " ", button("Close", () => notice(""))] : []));
}

export function wordsOf(error) {
  const where = error.where ? `${error.where}: ` : "";
  return `${where}${error.problem || "something went wrong"}${error.hint ? ` (${error.hint})` : ""}`.replaceAll('\\"', '"');
}

// What is wrong with what a form sent, at the input that it is about: they go by the end of where it stands.
export function sayWrong(form, inputs, error) {
  const old = form.querySelector(".wrong");
  const marked = form.querySelector("[aria-invalid]");
  old?.remove();
  for (const name of ["aria-invalid", "aria-describedby"]) marked?.removeAttribute(name);
  if (!error) return;
  const name = Object.keys(inputs).find((one) => error.where?.endsWith(one));
  const at = name && find(inputs[name]);
  const said = h("span", { className: "wrong", role: "alert", id: `${form.id}_wrong` }, capital(wordsOf(at ? { ...error, where: "" } : error)));
  if (!at) { form.append(said); return; }
  at.parentElement.append(said);
  at.setAttribute("aria-invalid", "true");
  at.setAttribute("aria-describedby", said.id);
  at.focus();
}
