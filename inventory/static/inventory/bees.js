// Acts on bees: the button counts what is chosen, "All" and "None", and splits spread over the strongest colonies.
const sheet = document.querySelector("[data-bees]");
const figure = (number) => number.toLocaleString("en-US");
const whole = (value) => Math.max(0, Math.trunc(Number(value)) || 0);
const cells = [...document.querySelectorAll("input[data-tally]")];
const hands = [...document.querySelectorAll(".hand[data-tally]")];
const numberOf = (hand) => hand.querySelector("input");
const words = (number) => `${figure(number)} ${number === 1 ? sheet.dataset.one : sheet.dataset.many}`;

function tallied() {
  return cells.filter((cell) => cell.checked).length + hands.reduce((sum, hand) => sum + whole(numberOf(hand).value), 0);
}

function tell() {
  const number = tallied();
  document.querySelector("[data-post-bees]").textContent = `${sheet.dataset.verbBees} ${words(number)}`;
  const frames = document.querySelector("[data-frames] input");
  if (frames) {
    const combs = number * whole(frames.value);
    document.querySelector("[data-result-bees]").textContent = number
      ? `${figure(combs)} ${combs === 1 ? "comb goes" : "combs go"} along` : "Tell how many splits each colony gives";
  }
  for (const sum of document.querySelectorAll("[data-sum]")) {
    const amount = cells.filter((cell) => cell.checked).reduce((all, cell) => all + Number(cell.dataset[sum.dataset.sum]), 0);
    sum.dataset.amount = Math.ceil(amount - 1e-9);
    sum.textContent = figure(Number(sum.dataset.amount));
  }
  const over = document.querySelector("[data-over]"), limits = [...document.querySelectorAll("[data-sum][data-limit]")];
  if (over) over.hidden = limits.every((sum) => Number(sum.dataset.amount) <= Number(sum.dataset.limit));
}

function spread(all) {  // one each for the strongest first, then a second round, as far as a colony's own limit
  const ranked = [...hands].sort((one, other) => Number(one.dataset.rank) - Number(other.dataset.rank));
  for (const hand of ranked) numberOf(hand).value = 0;
  for (let round = 1; all > 0 && round <= 9; round += 1) {
    for (const hand of ranked.slice(0, all)) numberOf(hand).value = round;
    all -= Math.min(all, ranked.length);
  }
}

if (sheet && document.querySelector("[data-post-bees]") && (cells.length || hands.length > 0)) {
  const total = document.querySelector("[data-spread]");
  if (total) total.hidden = false;
  document.addEventListener("input", (event) => {
    if (total && event.target === numberOf(total)) spread(whole(event.target.value));
    else if (total && hands.some((hand) => hand.contains(event.target))) numberOf(total).value = tallied();
    tell();
  });
  for (const button of document.querySelectorAll("[data-every]")) {
    button.hidden = false;
    button.addEventListener("click", () => {
      for (const cell of cells) cell.checked = Boolean(button.dataset.every);
      tell();
    });
  }
  if (hands.length || cells.length) tell();
}
