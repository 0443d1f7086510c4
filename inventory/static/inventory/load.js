// A load while it is told: pounds and cubic feet as dimension lines, trips, and the tick once the truck is over.
const truck = document.querySelector("[data-truck]");
const rows = [...document.querySelectorAll("[data-row]")];
const figure = (number) => number.toLocaleString("en-US");
const sum = (fields) => [...fields].reduce((all, field) => all + Math.max(0, Math.trunc(Number(field.value)) || 0), 0);
const told = (row) => sum(row.querySelectorAll(".hand input"));

function weight() {
  return rows.reduce((all, row) => all + Number(row.dataset.lb) * told(row)
    + Number(row.dataset.honey || 0) * sum(row.querySelectorAll("[data-full] input")), 0);
}

function room() {  // frames ride in the boxes of their depth as far as there are boxes
  const seats = {};
  for (const row of rows) seats[row.dataset.depth] = (seats[row.dataset.depth] ?? 0) + Number(row.dataset.holds || 0) * told(row);
  let cubicInches = 0;
  for (const row of rows) {
    const number = told(row);
    const inside = row.dataset.rides === undefined ? 0 : Math.min(number, seats[row.dataset.depth] ?? 0);
    if (inside) seats[row.dataset.depth] -= inside;
    cubicInches += Number(row.dataset.room || 0) * (number - inside);
  }
  return cubicInches * (1 + Number(truck.dataset.spacing) / 100) / 1728;
}

function draw(line, exact) {
  const amount = Math.ceil(Math.round(exact * 1e6) / 1e6), limit = Number(line.dataset.limit);
  const at = `${2 + 96 * Math.min(amount / Number(line.dataset.until), 1)}%`;
  const rest = line.querySelector("[data-load-rest]");
  line.querySelector("[data-load-amount]").textContent = figure(amount);
  line.querySelector("[data-load-solid]").setAttribute("x2", at);
  for (const end of ["x1", "x2"]) line.querySelector("[data-load-end]").setAttribute(end, at);
  rest.setAttribute("x1", amount > limit ? rest.getAttribute("x2") : at);
  const words = `${figure(amount)} ${line.dataset.load} where your truck takes ${figure(limit)}`;
  return { over: amount > limit ? words : "", trips: Math.ceil(exact / limit) };
}

function tell() {
  const exact = { lb: weight(), "cubic ft": room() };
  const drawn = [...truck.querySelectorAll("[data-load]")].map((line) => draw(line, exact[line.dataset.load]));
  const over = drawn.map((each) => each.over).filter(Boolean);
  const trips = Math.max(...drawn.map((each) => each.trips));
  const foot = document.querySelector("[data-load-foot]");
  const words = [...truck.querySelectorAll("[data-load]")].map((line) => `${line.querySelector("[data-load-amount]").textContent} ${line.dataset.load}`);
  if (foot) foot.textContent = over.length ? `${words.join(", ")}: more than the truck takes` : words.join(", ");
  truck.querySelector("[data-over]").hidden = !over.length;
  if (over.length) truck.querySelector("[data-trips]").textContent = `This load is ${over.join(" and ")}: that is ${trips === 1 ? "1 trip" : `${figure(trips)} trips`}.`;
}

if (truck) {
  document.addEventListener("input", tell);
  tell();
}
