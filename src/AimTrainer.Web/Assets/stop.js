// The emergency stop: a button and the key F9 on every page of a coach. To hide takes one tap, to show again two.
import { send, why } from '/assets/live.js';
import { timeWords } from '/assets/words.js';

const $ = id => document.getElementById(id);
const askEveryMs = 1500;
let stopped = !$('stopped').hidden, known = 0;

function show(state) {
  stopped = state.stopped;
  $('stopped').hidden = !stopped;
  $('stop').setAttribute('aria-pressed', String(stopped));
  document.documentElement.dataset.stopped = stopped;
  if (stopped) $('stopped-since').textContent = state.since ? `Since ${timeWords(state.since)}.` : '';
  else sure(false);
}

function sure(asked) {
  $('release').hidden = asked;
  $('release-sure').hidden = !asked;
}

function wrong(words) {
  $('stop-wrong').hidden = !words;
  $('stop-wrong').textContent = words;
  if (words) $('stopped').hidden = false;
}

async function act(what) {
  const turn = ++known;
  const answer = await send('POST', `/api/projection/${what}`);
  if (turn !== known) return;
  if (answer.ok) { wrong(''); show(answer.body); return; }
  wrong(`${why(answer)}${what === 'stop' && answer.status === 0 ? ' Switch the projectors off by hand.' : ''}`);
  look();
}

/** Another console may have stopped or released it. */
async function look() {
  if (document.hidden) return;
  const turn = known;
  try {
    const answer = await fetch('/api/projection', { cache: 'no-store' });
    if (answer.ok && turn === known) show(await answer.json());
  } catch {
    // The page's own link says that the host is away.
  }
}

$('stop').addEventListener('click', () => act('stop'));
$('release').addEventListener('click', () => { sure(true); $('release-no').focus(); });
$('release-no').addEventListener('click', () => { sure(false); $('release').focus(); });
$('release-yes').addEventListener('click', () => act('release'));
addEventListener('keydown', event => {
  if (event.key === 'F9' && !event.repeat) { event.preventDefault(); act('stop'); }
});
document.addEventListener('visibilitychange', look);
setInterval(look, askEveryMs);
$('stop').setAttribute('aria-pressed', String(stopped));
document.documentElement.dataset.stopped = stopped;
