// Balls: what is known of them, and the history of their surfaces.
import { send, why } from '/assets/live.js';

const $ = id => document.getElementById(id);
const form = $('ball-form'), surface = $('surface-form');
const numbers = ['weightPounds', 'radiusOfGyrationInches', 'differentialInches', 'gamesSinceSurfaceWork', 'roughness'];
let of = null; // The ball whose surface is asked for.

/** What is filled in; a number that is none stays as it was typed, so that the host says what is wrong with it. */
function filled(from) {
  const said = {};
  for (const [name, value] of new FormData(from)) {
    const text = value.trim();
    const number = Number(text.replace(',', '.'));
    if (text) said[name] = numbers.includes(name) && !Number.isNaN(number) ? number : text;
  }
  return said;
}

async function keep(method, path, what, wrong) {
  const answer = await send(method, path, what);
  if (answer.ok) { location.reload(); return; }
  $(wrong).textContent = why(answer);
  $(wrong).hidden = false;
}

form.addEventListener('submit', event => {
  event.preventDefault();
  keep('PUT', '/api/balls', filled(form), 'ball-wrong');
});

for (const ball of document.querySelectorAll('.ball')) {
  ball.querySelector('[data-edit]').addEventListener('click', () => {
    for (const input of form.querySelectorAll('input')) input.value = ball.dataset[input.name] === '?' ? '' : ball.dataset[input.name] ?? '';
    $('ball-title').textContent = `Change what is known of ${ball.dataset.name}`;
    form.scrollIntoView();
    $('surface').focus();
  });
  ball.querySelector('[data-work]').addEventListener('click', () => {
    of = ball.dataset;
    surface.reset();
    kindChosen();
    $('surface-wrong').hidden = true;
    $('surface-title').textContent = `Surface of ${of.name}`;
    $('surface-ask').showModal();
  });
}

function kindChosen() {
  const kind = surface.kind.value;
  for (const field of surface.querySelectorAll('[data-for]')) {
    field.hidden = field.dataset.for !== kind;
    for (const input of field.querySelectorAll('input')) input.disabled = field.hidden;
  }
}

surface.addEventListener('change', kindChosen);
surface.addEventListener('submit', event => {
  event.preventDefault();
  keep('POST', '/api/balls/surfaces', { bowler: of.bowler, ball: of.name, ...filled(surface) }, 'surface-wrong');
});
$('surface-no').addEventListener('click', () => $('surface-ask').close());
