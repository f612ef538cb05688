// The live link of a page: pictures of a station as they come, and shots that are sent once however often the link breaks.

const patienceMs = 12000; // A beat comes every 5 s; after this long without one the link counts as lost.

/** Follows a station. Calls onPicture(state) for every picture and onLink(up) when the link comes or goes. */
export function follow(station, view, onPicture, onLink) {
  let source, watch, up = null, retryMs = 500;

  const say = now => { if (now !== up) { up = now; onLink(now); } };
  const alive = () => { clearTimeout(watch); watch = setTimeout(lost, patienceMs); };

  function lost() {
    clearTimeout(watch);
    source?.close();
    source = null;
    say(false);
    signInWhenUnknown();
    setTimeout(open, retryMs);
    retryMs = Math.min(retryMs * 2, 5000);
  }

  function open() {
    if (source) return;
    source = new EventSource(`/api/stations/${station}/live?view=${view}`);
    alive();
    source.addEventListener('picture', event => {
      retryMs = 500;
      alive();
      say(true);
      onPicture(JSON.parse(event.data));
    });
    source.addEventListener('beat', () => { alive(); say(true); });
    source.addEventListener('error', lost);
  }

  addEventListener('online', () => { if (!source) open(); });
  document.addEventListener('visibilitychange', () => { if (!document.hidden && !source) open(); });
  open();
}

let access = null; // Who this browser is, asked once: {role, station, formToken, ...}.

/** Who this browser is to the host. */
export function whoAmI(anew) {
  if (!access || anew) {
    access = fetch('/api/access').then(answer => answer.json());
    access.catch(() => { access = null; });
  }
  return access;
}

/** Where nobody is known any more, to the page that lets one in. */
async function signInWhenUnknown() {
  try {
    if ((await whoAmI(true)).role === null) location.href = `/sign-in?next=${encodeURIComponent(location.pathname)}`;
  } catch {
    // The host does not answer.
  }
}

/** Sends JSON, or a text that is JSON already; the answer is {ok, status, body}, with status 0 when nobody answered. */
export async function send(method, url, body, text, anew = false) {
  try {
    const { formToken } = await whoAmI(anew);
    const answer = await fetch(url, {
      method,
      headers: { 'content-type': 'application/json', ...(formToken ? { 'x-aimtrainer-form': formToken } : {}) },
      body: text ?? (body === undefined ? undefined : JSON.stringify(body)),
    });
    const said = await answer.text();
    const told = said ? JSON.parse(said) : null;
    // A form token of an earlier sign-in: a new one, and once more.
    if (told?.type === '/problems/form-token' && !anew) return send(method, url, body, text, true);
    if (answer.status === 401 && !url.startsWith('/api/access/')) signInWhenUnknown();
    return { ok: answer.ok, status: answer.status, body: told };
  } catch {
    return { ok: false, status: 0, body: null };
  }
}

/** What a failed answer says, for a person. */
export const why = answer => answer.status === 0
  ? 'the host does not answer; it is tried again'
  : answer.body?.detail ?? `the host answered ${answer.status}`;

/** Shots that were tapped and not yet answered, kept in the browser so that neither sleep nor a lost link loses one. */
export class Outbox {
  constructor(station, onChange) {
    this.key = `aimtrainer.outbox.${station}`;
    this.station = station;
    this.onChange = onChange;
    this.sending = false;
    addEventListener('storage', event => { if (event.key === this.key) onChange(); });
    addEventListener('online', () => this.flush());
  }

  get waiting() {
    try { return JSON.parse(localStorage.getItem(this.key)) ?? []; } catch { return []; }
  }

  keep(list) {
    localStorage.setItem(this.key, JSON.stringify(list));
    this.onChange();
  }

  add(session, shot) {
    const id = `tap-${crypto.getRandomValues(new Uint32Array(3)).join('-')}`;
    this.keep([...this.waiting, { session, shot: { ...shot, id, time: new Date().toISOString(), source: 'typed' } }]);
    return this.flush();
  }

  /** Forgets a shot that the host would not take, after a person has read why. */
  dismiss(id) { this.keep(this.waiting.filter(one => one.shot.id !== id)); }

  async flush() {
    if (this.sending) return;
    this.sending = true;
    try {
      // In the order of the taps; the first that nobody answers stops the rest.
      for (const one of this.waiting) {
        if (one.refused) continue;
        const answer = await send('POST', `/api/stations/${this.station}/shots?session=${encodeURIComponent(one.session)}`, one.shot);
        if (answer.ok) {
          this.keep(this.waiting.filter(other => other.shot.id !== one.shot.id));
        } else if (answer.status === 0 || answer.status >= 500 || answer.status === 429 || answer.status === 401) {
          clearTimeout(this.retry);
          this.retry = setTimeout(() => this.flush(), 2000);
          return;
        } else {
          this.keep(this.waiting.map(other => other.shot.id === one.shot.id ? { ...other, refused: why(answer) } : other));
        }
      }
    } finally {
      this.sending = false;
    }
  }
}
