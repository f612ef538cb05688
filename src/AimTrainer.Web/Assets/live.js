// The live link of a page: pictures of a station as they come, and shots that are sent once however often the link breaks.

const patienceMs = 12000; // A beat comes every 5 s; after this long without one the link counts as lost.

/**
 * Follows a station, or 'all'. Calls onPicture(state) for every picture, onLink(up, words) when the link comes or goes (words say
 * why, when it is known), and onBeat({feeds}) when nothing is new but the age of the
 * feeds' last lines. A page that nobody looks at lets its link go: a browser has few of them.
 */
export const follow = (station, view, onPicture, onLink, onBeat) => followEvents(`/api/stations/${station}/live?view=${view}`, onPicture, onLink, onBeat);

/** The same for any stream of pictures of the host. */
export function followEvents(url, onPicture, onLink, onBeat = () => {}) {
  let source, watch, retry, up = null, retryMs = 250;

  const say = (now, words) => {
    if (now === up && !words) return;
    up = now;
    document.documentElement.dataset.link = now ? 'up' : 'lost';
    onLink(now, words);
  };
  const alive = () => { clearTimeout(watch); watch = setTimeout(lost, patienceMs); };

  function close() {
    clearTimeout(watch);
    clearTimeout(retry);
    source?.close();
    source = null;
  }

  async function lost() {
    close();
    if (document.hidden) return;
    retry = setTimeout(open, retryMs);
    retryMs = Math.min(retryMs * 2, 3000);
    say(false);
    // Where the host answers but sends this browser elsewhere, nobody is signed in any more; what was tapped is kept and sent later.
    const answer = await fetch(location.href, { headers: { accept: 'text/html' }, redirect: 'manual', cache: 'no-store' }).catch(() => null);
    if (answer?.type === 'opaqueredirect') location.reload();
  }

  function open() {
    clearTimeout(retry);
    if (source || document.hidden) return;
    source = new EventSource(url);
    alive();
    source.addEventListener('picture', event => {
      retryMs = 250;
      alive();
      say(true);
      onPicture(JSON.parse(event.data));
    });
    source.addEventListener('beat', event => { alive(); say(true); onBeat(JSON.parse(event.data)); });
    source.addEventListener('error', lost);
  }

  addEventListener('online', open);
  addEventListener('pageshow', open);
  addEventListener('pagehide', close);
  document.addEventListener('visibilitychange', () => { if (document.hidden) close(); else open(); });
  open();
}

let access = null; // Who this browser is to the host: {role, station, formToken, ...}; asked when it is needed.

/** Who this browser is to the host. */
export async function whoAmI(anew = false) {
  if (!access || anew) access = await (await fetch('/api/access')).json();
  return access;
}

/** Sends JSON, or a text that is JSON already; the answer is {ok, status, body}, with status 0 when nobody answered. */
export async function send(method, url, body, text) {
  const once = async () => {
    const answer = await fetch(url, {
      method,
      headers: { 'content-type': 'application/json', ...(access?.formToken ? { 'x-aimtrainer-form': access.formToken } : {}) },
      body: text ?? (body === undefined ? undefined : JSON.stringify(body)),
      signal: AbortSignal.timeout(15000),
    });
    const said = await answer.text();
    return { ok: answer.ok, status: answer.status, body: said ? JSON.parse(said) : null };
  };
  try {
    await whoAmI();
    const answer = await once();
    if (answer.body?.type !== '/problems/form-token') return answer;
    await whoAmI(true); // A form token is wanted, or a newer one.
    return await once();
  } catch {
    return { ok: false, status: 0, body: null };
  }
}

/** What a failed answer says, for a person. */
export const why = answer => answer.status === 0
  ? 'The host does not answer. When it is back, look whether this was done before you try again.'
  : answer.body?.detail ?? answer.body?.title ?? `The host answered ${answer.status}.`;

/**
 * Shots that were tapped and not yet answered, each under a key of its own in the browser's storage, so that neither sleep nor a lost
 * link nor a second page loses one. Each has an id: however often it is sent, the host takes it once.
 */
export class Outbox {
  constructor(station, onChange) {
    this.station = station;
    this.prefix = `aimtrainer.tap.${station}.`;
    this.onChange = onChange;
    this.sending = false;
    this.unkept = new Map(); // Where the browser keeps nothing (storage is full or forbidden): for as long as the page lives.
    addEventListener('storage', event => { if (event.key?.startsWith(this.prefix)) onChange(); });
    addEventListener('online', () => this.flush());
  }

  /** In the order of the taps. */
  get waiting() {
    const all = new Map(this.unkept);
    try {
      for (const key of Object.keys(localStorage)) if (key.startsWith(this.prefix)) all.set(key, localStorage.getItem(key));
    } catch { /* As above. */ }
    return [...all].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, text]) => ({ key, ...JSON.parse(text) }));
  }

  get isSafe() { return this.unkept.size === 0; }

  keep(key, value) {
    const text = JSON.stringify(value);
    try { localStorage.setItem(key, text); } catch { this.unkept.set(key, text); }
    this.onChange();
  }

  drop(key) {
    this.unkept.delete(key);
    try { localStorage.removeItem(key); } catch { /* Not there then. */ }
    this.onChange();
  }

  /** Keeps a shot: of which session, at which aim (its key, and in words), and where it crossed. */
  add(session, aim, words, shot) {
    const chance = [...crypto.getRandomValues(new Uint32Array(3))].map(each => each.toString(36)).join('');
    const key = `${this.prefix}${String(Date.now()).padStart(15, '0')}-${String(Math.floor(performance.now())).padStart(10, '0')}-${chance}`;
    this.keep(key, { session, aim, words, shot: { ...shot, id: `tap-${chance}`, time: new Date().toISOString(), source: 'typed' } });
    return this.flush();
  }

  /** The coach has decided: a shot at another target counts for the one that is due now. */
  countNow(one) {
    const { key, aim, refused, otherAim, ...rest } = one;
    this.keep(key, rest);
    return this.flush();
  }

  /** Sends what waits, in the order of the taps; the first that nobody answers stops the rest. */
  async flush() {
    if (this.sending) return;
    this.sending = true;
    clearTimeout(this.retry);
    try {
      for (let one; (one = this.waiting.find(each => !each.refused)) !== undefined;) {
        const aim = one.aim ? `&aim=${encodeURIComponent(one.aim)}` : '';
        const answer = await send('POST', `/api/stations/${this.station}/shots?session=${encodeURIComponent(one.session)}${aim}`, one.shot);
        if (answer.ok) {
          this.drop(one.key);
        } else if (answer.status === 0 || answer.status >= 500 || [401, 408, 425, 429].includes(answer.status)) {
          this.retry = setTimeout(() => this.flush(), 1500);
          return;
        } else {
          const { key, ...rest } = one;
          this.keep(key, { ...rest, refused: why(answer), otherAim: answer.body?.type === '/problems/other-aim' });
        }
      }
    } finally {
      this.sending = false;
    }
  }
}
