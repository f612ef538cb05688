// What a group throws today: the words and the balls of the drill that is chosen, for those who are here.
const form = document.querySelector('.start-group');

function chosen() {
  const away = new Set([...form.querySelectorAll('[name="absent[]"]:checked')].map(box => box.value));
  for (const part of form.querySelectorAll('[data-of-drill]')) part.hidden = part.disabled = part.dataset.ofDrill !== form.drill.value;
  for (const part of form.querySelectorAll('[data-of-bowler]')) part.hidden = part.disabled = away.has(part.dataset.ofBowler);
}

if (form) {
  form.addEventListener('change', chosen);
  chosen();
}
