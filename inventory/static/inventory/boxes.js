// Boxes over a whole yard: keeps the dash-dotted boxes, the sentence and the button in step with the numbers.
const form = document.querySelector("[data-boxes]");
const figure = (number) => number.toLocaleString("en-US");
const typed = (field) => Math.max(0, Math.min(Math.trunc(Number(field?.value)) || 0, 10));

function numberOf(hive, every) {
  if (hive.dataset.misfit !== undefined) return 0;
  const own = form.querySelector(`[name="own__${hive.dataset.hive}"]`);
  if (own) return typed(own);
  return hive.dataset.usual === undefined ? every : Math.min(every, Number(hive.dataset.usual));
}

function draw(hive, number) {
  const marks = hive.dataset.marks.split(" ").filter(Boolean).slice(0, number).map((mark) => mark.split(",").map(Number));
  const rise = Math.max(0, ...marks.map(([, y]) => (y < 2 ? 2 - y : 0)));
  const svg = hive.querySelector("svg"), [, , wide] = svg.getAttribute("viewBox").split(" ");
  svg.setAttribute("viewBox", `0 ${-rise} ${wide} ${Number(svg.dataset.tall) + rise}`);
  svg.querySelector(".placed").setAttribute("d", marks.map(([x, y, w, t]) => `M${x} ${y}h${w}v${t}h${-w}z`).join(""));
  hive.querySelector("[data-number]").textContent = number || "none";
}

function sentence(boxes, beyond) {
  const off = form.dataset.off !== undefined;
  if (!boxes) return off ? "Nothing comes off" : "Nothing goes on";
  const told = `${figure(boxes)} ${boxes === 1 ? form.dataset.one : form.dataset.many}`;
  const found = `${figure(beyond)} beyond the book, booked as found`;
  if (off) return `${told} ${boxes === 1 ? "comes" : "come"} off${beyond ? `, ${found}` : ""}`;
  const left = Number(form.dataset.booked) - boxes;
  const rest = beyond ? found : `${figure(left)} ${left === 1 ? "stays" : "stay"} in the store`;
  return `${told} ${boxes === 1 ? "goes" : "go"} on, ${rest}`;
}

function tell() {
  const every = typed(form.querySelector('[name="every"]'));
  let boxes = 0, hives = 0, beyond = 0;
  for (const hive of form.querySelectorAll("[data-hive]")) {
    const number = numberOf(hive, every);
    draw(hive, number);
    boxes += number;
    hives += number > 0 ? 1 : 0;
    beyond += Math.max(0, number - Number(hive.dataset.usual ?? 0));
  }
  if (form.dataset.off === undefined) beyond = Math.max(0, boxes - Number(form.dataset.booked));
  document.querySelector("[data-result-boxes]").textContent = sentence(boxes, beyond);
  document.querySelector("[data-post]").textContent = `${form.dataset.verbBoxes} ${hives} ${hives === 1 ? "colony" : "colonies"}`;
}

if (form?.querySelector("[data-hives]")) {
  document.addEventListener("input", tell);
  tell();
}
