// The balls of a comparison: a field for each role that the drill names.

/** The roles of the drill that an option stands for; none when it compares no balls. */
export const rolesOf = option => option?.dataset.balls ? option.dataset.balls.split('\n') : [];

/** Puts a field for each role into a box. The list of suggestions may be missing. */
export function showBallFields(box, roles, prefix, list) {
  box.replaceChildren(...roles.map((role, index) => {
    const field = Object.assign(document.createElement('div'), { className: 'field' });
    const label = Object.assign(document.createElement('label'), { htmlFor: `${prefix}-${index}`, textContent: `${role[0].toUpperCase()}${role.slice(1)} ball` });
    const input = Object.assign(document.createElement('input'), { id: `${prefix}-${index}`, maxLength: 200, required: true, autocomplete: 'off', placeholder: 'as the bowler calls it' });
    if (list) input.setAttribute('list', list);
    input.dataset.role = role;
    field.append(label, input);
    return field;
  }));
}

/** What is in them, as the host takes it; undefined when there are none. */
export function ballsIn(box) {
  const fields = [...box.querySelectorAll('[data-role]')];
  return fields.length ? fields.map(input => ({ role: input.dataset.role, name: input.value.trim() })) : undefined;
}
