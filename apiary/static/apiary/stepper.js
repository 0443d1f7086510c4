// Steppers: the two buttons beside a number move it by one, within its bounds; a glove needs no keyboard.
for (const field of document.querySelectorAll("[data-stepper] input")) field.inputMode = "none";

document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-stepper] [data-step]");
  if (!button) return;
  const field = button.closest("[data-stepper]").querySelector("input");
  if (Number(button.dataset.step) > 0) field.stepUp();
  else field.stepDown();
  field.dispatchEvent(new Event("input", { bubbles: true }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
});
