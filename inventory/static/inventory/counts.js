// A count: each number is kept in the draft as soon as it stands, so that nothing entered is lost with the page.
const form = document.querySelector("form[data-keeps]");
const told = form.querySelector("[data-kept]");
const result = document.querySelector("[data-result]");
const blind = form.dataset.tells === "blind";
let waiting = new Map(), timer = 0, busy = false;

async function keep() {
  if (busy || !waiting.size) return;
  busy = true;
  const sent = waiting;
  waiting = new Map();
  const body = new FormData();
  body.set("csrfmiddlewaretoken", form.elements.csrfmiddlewaretoken.value);
  for (const [name, value] of sent) body.set(name, value);
  try {
    const answer = await fetch(form.action, { method: "POST", body, headers: { "X-Requested-With": "kept" } });
    if (answer.status !== 204) throw new Error(answer.status);
    told.textContent = "Kept in the draft";
  } catch {
    for (const [name, value] of sent) if (!waiting.has(name)) waiting.set(name, value);
    told.textContent = "Not kept yet: no answer. Leave this page open, it is tried again";
    timer = setTimeout(keep, 5000);
  }
  busy = false;
  if (waiting.size && !timer) keep();
}

function tell() {
  if (!blind) return;
  const numbers = [...form.querySelectorAll("[data-row] input")];
  const counted = numbers.filter((field) => field.value !== "").length;
  result.textContent = counted ? `${counted} of ${numbers.length} kinds counted` : "Nothing is counted yet";
}

form.addEventListener("input", (event) => {
  if (!event.target.closest("[data-row]")) return;
  tell();
  waiting.set(event.target.name, event.target.value);
  clearTimeout(timer);
  timer = setTimeout(() => { timer = 0; keep(); }, 600);
});
tell();
