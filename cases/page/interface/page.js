// A page with figures as text: the least that shows the way through the core.
const facts = PageData.json('page-facts');
const element = (id) => document.getElementById(id);
let core = null, changes = {};

function cell(row, text) {
  const td = document.createElement('td');
  td.textContent = text;
  row.append(td);
}

function show(answer) {
  element('waiting').textContent = answer.error ? answer.error.text : '';
  if (answer.error) return;
  changes = answer.changes;
  element('head').replaceChildren(...(answer.head || []).map((line) => {
    const p = document.createElement('p');
    p.className = 'head';
    p.textContent = line.text;
    return p;
  }));
  element('figures').tBodies[0].replaceChildren(...answer.figures.map((figure) => {
    const row = document.createElement('tr');
    for (const text of [figure.label, figure.load || '', figure.shown + ' ' + figure.shown_unit]) cell(row, text);
    return row;
  }));
  element('case').textContent = answer.case_text;
  const holes = facts.opened.plate.holes.map((hole) => {
    const button = document.createElement('button');
    const screw = answer.screws.find((one) => one.hole === hole.hole);
    button.textContent = hole.hole + (screw ? ' ' + screw.label : ' empty');
    button.setAttribute('aria-pressed', String(Boolean(screw)));
    button.disabled = core === null;
    button.onclick = () =>
      ask({ edit: screw ? { do: 'remove_screw', label: screw.label } : { do: 'put_screw', hole: hole.hole } });
    return button;
  });
  element('holes').replaceChildren(element('holes').firstElementChild, ...holes);
}

async function ask(more) {
  element('waiting').textContent = 'Solving …';
  core.drop('click');
  const answer = await core.ask({ changes, detail: 'verdict', ...more }, 'click');
  if (!answer.dropped) show(answer);
}

element('name').textContent = facts.opened.name;
element('live').hidden = false;
element('still').hidden = true;
show(facts.first);
PageCore.start().then((started) => {
  core = started;
  show(facts.first);
}).catch((fault) => { element('waiting').textContent = fault.message; });
