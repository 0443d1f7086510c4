// The evening's table at the keyboard: Enter goes to the next row, a row is added below the last one, Ctrl+Enter books.
const body = document.querySelector("[data-rows]");
const form = document.getElementById("act");
const rows = () => [...body.querySelectorAll("tr:not(.faults)")];
const told = (row) => [...row.querySelectorAll("input:not([type=date])")].some((field) => field.value.trim());

function addRow() {
  const last = rows().at(-1), number = Number(last.querySelector("th").textContent) + 1;
  const row = last.cloneNode(true);
  row.classList.remove("wrong");
  row.querySelector("th").textContent = number;
  for (const field of row.querySelectorAll("input, select")) {
    field.name = field.name.replace(/^\d+/, number);
    field.setAttribute("aria-label", field.getAttribute("aria-label").replace(/\d+$/, number));
    field.removeAttribute("aria-describedby");
    if (field.matches("select")) field.selectedIndex = 0; else field.value = "";
  }
  body.append(row);
  return row;
}

function tell() {
  const all = rows();
  if (told(all.at(-1))) addRow();
  const number = all.filter(told).length;
  const words = number === 1 ? "1 row" : `${number} rows`;
  document.querySelector("[data-result]").textContent = number ? `${words} told` : "Tell what was done, a row each";
  document.querySelector("[data-post]").textContent = number ? `Book ${words}` : "Book the rows";
}

if (body) {
  body.addEventListener("input", tell);
  body.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.isComposing) return;
    event.preventDefault();
    if (event.ctrlKey || event.metaKey) { form.requestSubmit(document.querySelector("[data-post]")); return; }
    const all = rows(), at = all.indexOf(event.target.closest("tr"));
    (all[at + 1] ?? addRow()).querySelector("input").focus();
  });
  tell();
}
