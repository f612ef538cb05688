import { send, why } from '/assets/live.js';

const form = document.getElementById('start');
const wrong = document.getElementById('wrong');
form.addEventListener('submit', async event => {
  event.preventDefault();
  const wish = {};
  for (const [name, value] of new FormData(form)) {
    if (value.trim()) wish[name] = name === 'patternFeet' ? Number(value.replace(',', '.')) : value.trim();
  }
  if (Number.isNaN(wish.patternFeet)) wish.patternFeet = form.patternFeet.value;
  const answer = await send('POST', `/api/stations/${form.dataset.station}/sessions`, wish);
  if (answer.ok) { location.href = `/lane/${form.dataset.station}`; return; }
  wrong.textContent = why(answer);
  wrong.hidden = false;
});
