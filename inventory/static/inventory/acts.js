// Sheets of acts: sums while you tell, "All" of a row, and a stepper that runs on while it is held.
const form = document.getElementById("act");
const rows = [...document.querySelectorAll("[data-row]")];
const numberOf = (row) => row.querySelector(".hand input");
const figure = (number) => number.toLocaleString("en-US");
const many = { piece: "pieces", box: "boxes", set: "sets", bottle: "bottles", quart: "quarts" };

function amounts() {
  const sums = new Map();
  for (const row of rows) {
    const one = row.dataset.owed === undefined && row.dataset.many === undefined;
    for (const field of one ? [numberOf(row)] : row.querySelectorAll(".hand input")) {
      const number = Math.trunc(Number(field.value)) || 0;
      if (number > 0) sums.set(row.dataset.unit, (sums.get(row.dataset.unit) ?? 0) + number);
    }
  }
  return [...sums].map(([unit, number]) => `${figure(number)} ${number === 1 ? unit : many[unit] ?? unit}`);
}

function differences() {
  let more = 0, missing = 0;
  for (const row of rows) {
    const words = row.querySelector("[data-difference]");
    if (!words) continue;
    const fields = row.dataset.owed === undefined ? [numberOf(row)] : [...row.querySelectorAll(".hand input")];
    const counted = fields[0].value === "" ? null : fields.reduce((sum, field) => sum + (Number(field.value) || 0), 0);
    const gap = counted === null ? 0 : counted - Number(row.dataset.booked);
    if (gap > 0) more += gap; else missing -= gap;
    const less = row.dataset.owed === undefined ? "missing" : "still owed";
    words.textContent = counted === null ? "not counted" : gap > 0 ? `${figure(gap)} more` : gap < 0 ? `${figure(-gap)} ${less}` : "";
  }
  return { more, missing };
}

function tell() {
  const sums = amounts(), gaps = differences();
  const result = document.querySelector("[data-result]"), button = document.querySelector("[data-post]");
  if (!result || !form?.dataset.verb) return;
  const kind = form.dataset.tells;
  if (kind === "count") {
    const words = [];
    if (gaps.more) words.push(`${figure(gaps.more)} more`);
    if (gaps.missing) words.push(`${figure(gaps.missing)} missing`);
    result.textContent = words.length ? `${words.join(", ")}; the rest agrees` : "All of it agrees with the book";
  } else if (kind === "sums") {
    result.textContent = sums.length ? sums.join(" and ") : "Tell how many of each";
    button.textContent = sums.length === 1 ? `${form.dataset.verb} ${sums[0]}` : `${form.dataset.verb} the pieces`;
  } else if (kind === "owed") {
    result.textContent = gaps.missing ? `${figure(gaps.missing)} stay owed` : gaps.more ? `${figure(gaps.more)} more than owed` : "All that is owed came";
    button.textContent = sums.length === 1 ? `${form.dataset.verb} ${sums[0]}` : `${form.dataset.verb} the order`;
  }
}

for (const all of document.querySelectorAll("[data-all]")) {
  all.hidden = false;
  all.addEventListener("click", () => {
    const row = all.closest("[data-row]");
    numberOf(row).value = row.dataset.booked;
    numberOf(row).dispatchEvent(new Event("input", { bubbles: true }));
  });
}

let timer = 0, held = false;
document.addEventListener("pointerdown", (event) => {
  const button = event.target.closest("[data-stepper] [data-step]");
  held = false;
  if (!button) return;
  const field = button.closest("[data-stepper]").querySelector("input");
  let beats = 0;
  const beat = () => {
    held = true;
    beats += 1;
    const by = beats > 20 ? 10 : 1;
    if (Number(button.dataset.step) > 0) field.stepUp(by); else field.stepDown(by);
    field.dispatchEvent(new Event("input", { bubbles: true }));
    timer = setTimeout(beat, 90);
  };
  timer = setTimeout(beat, 450);
});
for (const end of ["pointerup", "pointercancel", "pointerleave"]) document.addEventListener(end, () => clearTimeout(timer));
document.addEventListener("click", (event) => {  // the press that ended a hold does not step once more
  if (held && event.target.closest("[data-stepper] [data-step]")) event.stopImmediatePropagation();
  held = false;
}, true);
document.addEventListener("input", tell);
if (rows.length) tell();
