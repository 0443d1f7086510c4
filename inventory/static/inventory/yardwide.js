// A whole yard with exceptions: keeps each hive's number, the sentence and the button in step with what is told.
const form = document.querySelector("[data-yardwide]");
const figure = (number) => number.toLocaleString("en-US");
const typed = (field) => Math.max(0, Math.min(Math.trunc(Number(field?.value)) || 0, Number(form.dataset.most)));

function numberOf(hive, every) {
  const own = form.querySelector(`[name="own__${hive.dataset.hive}"]`);
  if (own) return typed(own);
  return hive.dataset.usual === undefined ? every : Math.min(every, Number(hive.dataset.usual));
}

function fed(told) {
  const chosen = form.querySelector("[name=ration]:checked")?.value;
  const ration = form.querySelector(`[data-ration="${chosen}"]`);
  if (!told || !ration) return "Nothing is fed";
  const lb = Math.round(told * Number(ration.dataset.lb)), beyond = Math.max(0, lb - Number(ration.dataset.there));
  const rest = beyond ? `, ${figure(beyond)} lb beyond the book, booked as found` : "";
  const syrup = ration.dataset.syrup !== undefined;
  const whole = `${figure(syrup ? told / 4 : told)} ${syrup ? "gal" : "lb"} of ${ration.dataset.words}`;
  return `${whole}${syrup ? `, ${figure(lb)} lb of sugar` : ""} from the store${rest}`;
}

function drawn(told, beyond) {
  if (!told) return "No comb is drawn";
  return `${figure(told)} ${told === 1 ? form.dataset.one : form.dataset.many} became comb${beyond ? `, ${figure(beyond)} beyond the book, booked as found` : ""}`;
}

function tell() {
  const every = typed(form.querySelector("[name=every]"));
  let told = 0, hives = 0, beyond = 0;
  for (const hive of form.querySelectorAll("[data-hive]")) {
    const number = numberOf(hive, every);
    hive.querySelector("[data-number]").textContent = number || "none";
    told += number;
    hives += number > 0 ? 1 : 0;
    beyond += Math.max(0, number - Number(hive.dataset.usual ?? 0));
  }
  const words = form.querySelector("[data-ration]") ? fed(told) : drawn(told, beyond);
  document.querySelector("[data-result-yardwide]").textContent = words;
  document.querySelector("[data-post]").textContent = `${form.dataset.verbYardwide} ${hives} ${hives === 1 ? "colony" : "colonies"}`;
}

if (form?.querySelector("[data-hive]")) {
  document.addEventListener("input", tell);
  document.addEventListener("change", tell);
  tell();
}
