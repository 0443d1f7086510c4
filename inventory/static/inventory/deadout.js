// A deadout's rows in one line each while you tell them, and what is saved, held back and written off.
const rows = [...document.querySelectorAll(".piece.folded")];
const whole = (field) => Math.max(0, Math.trunc(Number(field.value)) || 0);
const worth = document.querySelector("[data-worth]");
const amount = (cents) => (cents / 100).toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const money = (cents) => worth.dataset.worth.replace("0.00", amount(cents));
const KEPT = new Set(["sound", "to_mend"]);

function fates(row) {
  const sums = {}, found = whole(row.querySelector("details > .hand input"));
  let parted = 0;
  for (const part of row.querySelectorAll("[data-part]")) {
    const number = whole(part.querySelector("input")), fate = part.dataset.part.split("__")[0];
    sums[fate] = (sums[fate] ?? 0) + number;
    parted += number;
  }
  const chosen = row.querySelector(".choice input:checked");
  if (chosen) sums[chosen.value] = (sums[chosen.value] ?? 0) + Math.max(0, found - parted);
  sums.gone = Math.max(0, Number(row.dataset.booked) - found);
  return { sums, found, chosen, parted };
}

function tell() {
  const cents = { saved: 0, held: 0, lost: 0 };
  for (const row of rows) {
    const { sums, found, chosen, parted } = fates(row), booked = Number(row.dataset.booked), gap = found - booked;
    const words = gap < 0 ? `${found} of ${booked} found, ${-gap} missing` : gap > 0 ? `${found} found, ${gap} more` : `${found} found`;
    row.querySelector("[data-said]").textContent = words;
    const fate = chosen?.closest("label").textContent.trim().toLowerCase() ?? "";
    row.querySelector("[data-fate]").textContent = parted ? `${fate}, ${parted} elsewhere` : fate;
    for (const [name, number] of Object.entries(sums)) {
      cents[KEPT.has(name) ? "saved" : name === "held" ? "held" : "lost"] += number * (Number(row.dataset.cents) || 0);
    }
  }
  if (!worth) return;
  worth.hidden = false;
  for (const name of ["saved", "held", "lost"]) worth.querySelector(`[data-${name}]`).textContent = money(cents[name]);
}

document.addEventListener("input", tell);
document.addEventListener("change", tell);
if (rows.length) tell();
