// Forms that send what is in them as one JSON object. A field's name may end with its sort: ":whole", ":wholes", ":flag", ":ball"; "[]" makes a list.
import { send, why, whoAmI } from '/assets/live.js';

const whole = text => { const number = Number(text); return text.trim() === '' ? undefined : Number.isNaN(number) ? text : number; };

function valuesOf(form) {
  const wish = {};
  for (const field of form.elements) {
    if (!field.name || field.matches(':disabled')) continue;
    const [name, sort] = field.name.split(':');
    if (name.endsWith('[]')) {
      if (field.checked) (wish[name.slice(0, -2)] ??= []).push(field.value);
    } else if (sort === 'flag') {
      wish[name] = field.checked;
    } else if (sort === 'ball') {
      if (field.value.trim()) (wish[name] ??= []).push({ bowler: field.dataset.bowler, role: field.dataset.role, name: field.value.trim() });
    } else if (sort === 'wholes') {
      wish[name] = field.value.split(/[,\s]+/).filter(Boolean).map(whole);
    } else {
      const value = sort === 'whole' ? whole(field.value) : field.value.trim() || undefined;
      if (value !== undefined) wish[name] = value;
    }
  }
  return wish;
}

async function download(form) {
  const access = await whoAmI();
  const answer = await fetch(form.dataset.download, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json', ...(access?.formToken ? { 'x-aimtrainer-form': access.formToken } : {}) },
    body: JSON.stringify(valuesOf(form)),
  });
  if (!answer.ok) return { ok: false, status: answer.status, body: await answer.json() };
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await answer.blob());
  link.download = form.dataset.file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  return { ok: true, status: answer.status, body: null };
}

for (const form of document.querySelectorAll('form[data-post], form[data-delete], form[data-download]')) {
  form.addEventListener('submit', async event => {
    event.preventDefault();
    const button = form.querySelector('[type="submit"]'), wrong = form.querySelector('[role="alert"]');
    button.disabled = true;
    wrong.hidden = true;
    const answer = form.dataset.download ? await download(form)
      : await send(form.dataset.delete ? 'DELETE' : 'POST', form.dataset.delete ?? form.dataset.post, form.dataset.delete ? undefined : valuesOf(form));
    button.disabled = false;
    if (!answer.ok) {
      wrong.textContent = why(answer);
      wrong.hidden = false;
    } else if (form.dataset.stay !== undefined) {
      form.querySelector('.told').replaceChildren(...answer.body.map(one => {
        const li = document.createElement('li');
        if (one.sessionId) {
          const link = document.createElement('a');
          link.href = `/lane/${one.station}`;
          link.textContent = `lane ${one.station}`;
          li.append(`${one.bowler}: `, link);
        } else {
          li.className = 'not-started';
          li.textContent = `${one.bowler}: ${one.why}`;
        }
        return li;
      }));
    } else if (!form.dataset.download) {
      location.href = form.dataset.go ? form.dataset.go.replace('{id}', answer.body?.id ?? '') : location.href;
    }
  });
}

for (const button of document.querySelectorAll('[data-print]')) button.addEventListener('click', () => print());
