import { ballsIn, rolesOf, showBallFields } from '/assets/ball-fields.js';
import { send, why } from '/assets/live.js';

const form = document.getElementById('start');
const wrong = document.getElementById('wrong');
const go = document.getElementById('go');

function drillChosen() {
  const option = form.drill.selectedOptions[0];
  document.getElementById('purpose').textContent = option?.dataset.purpose ?? '';
  const roles = rolesOf(option);
  document.getElementById('compared').hidden = roles.length === 0;
  document.getElementById('one-ball').hidden = roles.length > 0;
  showBallFields(document.getElementById('roles'), roles, 'ball', 'balls');
}

/** A bowler who is known: the hand and the balls that the record has. */
function bowlerChosen() {
  const known = [...document.querySelectorAll('#known option')].find(each => each.value.toLowerCase() === form.bowler.value.trim().toLowerCase());
  if (known) for (const radio of form.querySelectorAll('[name="hand"]')) radio.checked = radio.value === known.dataset.hand;
  const balls = known?.dataset.balls ? known.dataset.balls.split('\n') : [];
  document.getElementById('balls').replaceChildren(...balls.map(name => Object.assign(document.createElement('option'), { value: name })));
}

form.drill.addEventListener('change', drillChosen);
form.bowler.addEventListener('input', bowlerChosen);
drillChosen();
bowlerChosen();

form.addEventListener('submit', async event => {
  event.preventDefault();
  const wish = {};
  for (const [name, value] of new FormData(form)) {
    if (value.trim()) wish[name] = value.trim();
  }
  const compared = ballsIn(document.getElementById('roles'));
  if (compared) {
    delete wish.ball;
    wish.balls = compared;
  }
  if (wish.patternFeet !== undefined) {
    const feet = Number(wish.patternFeet.replace(',', '.'));
    if (!Number.isNaN(feet)) wish.patternFeet = feet;
  }
  go.disabled = true;
  const answer = await send('POST', `/api/stations/${form.dataset.station}/sessions`, wish);
  if (answer.ok) { location.href = `/lane/${form.dataset.station}`; return; }
  go.disabled = false;
  wrong.textContent = why(answer);
  wrong.hidden = false;
});
