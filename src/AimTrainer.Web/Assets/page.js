// On every page: times in the reader's zone, lengths in the chosen unit, and lists that follow what happens on the lanes.

import { follow } from '/assets/live.js';
import { lengthWords, missWords, timeWords } from '/assets/words.js';

function tell(root) {
  for (const node of root.querySelectorAll('time[datetime]')) node.textContent = timeWords(node.dateTime);
  for (const node of root.querySelectorAll('[data-boards]')) {
    const boards = Number(node.dataset.boards), perBoard = node.dataset.perBoard ? Number(node.dataset.perBoard) : undefined;
    node.textContent = node.dataset.hand ? missWords(boards, node.dataset.hand, perBoard) : lengthWords(boards, perBoard);
  }
}

const region = document.querySelector('[data-follow]');
const served = region?.innerHTML; // As the host wrote it: before times and lengths are told in the reader's way.

tell(document);
addEventListener('aimtrainer:unit', () => tell(document));

const filter = document.querySelector('.filter input');
const sift = () => {
  const words = filter.value.trim().toLowerCase();
  for (const one of document.querySelectorAll('[data-sift]')) one.hidden = !one.dataset.sift.toLowerCase().includes(words);
  document.getElementById('sifted').textContent = [...document.querySelectorAll('[data-sift]')].some(one => !one.hidden) ? '' : 'Nothing with these words.';
};
filter?.addEventListener('input', sift);

if (region) {
  const atLeastMs = Number(region.dataset.follow) || 500; // A page that is much work for the host is not asked for more often than it says.
  let known = served, first = true, busy = false, again = false, last = 0, later = null;
  const renew = async () => {
    if (busy) { again = true; return; }
    const wait = first ? 0 : last + atLeastMs - Date.now(); // What happened since the page was written is asked for at once.
    if (wait > 0) { later ??= setTimeout(() => { later = null; renew(); }, wait); return; }
    busy = true;
    first = false;
    last = Date.now();
    try {
      const answer = await fetch(location.href, { headers: { accept: 'text/html' } });
      const fresh = answer.ok ? new DOMParser().parseFromString(await answer.text(), 'text/html').querySelector('[data-follow]') : null;
      if (fresh && fresh.innerHTML !== known) {
        const at = region.contains(document.activeElement) ? document.activeElement.getAttribute('href') : null;
        region.replaceChildren(...document.adoptNode(fresh.cloneNode(true)).childNodes);
        tell(region);
        if (filter) sift();
        if (at) [...region.querySelectorAll('a')].find(each => each.getAttribute('href') === at)?.focus({ preventScroll: true });
      }

      if (fresh) known = fresh.innerHTML;
    } catch {
      // The link that is followed says so; the list is fetched again when it is back.
    } finally {
      busy = false;
      if (again) { again = false; renew(); }
    }
  };
  const link = document.getElementById('link');
  follow('all', 'coach', renew, (up, words) => {
    if (!link) return;
    link.hidden = up;
    link.textContent = words ?? 'The host does not answer. This page goes on by itself when it does.';
  }, renew);
}
