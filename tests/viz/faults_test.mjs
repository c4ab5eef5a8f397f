// SPDX-License-Identifier: GPL-3.0-or-later
// The checks find out what is wrong: pages whose data were spoilt, and pages that ask for more or complain.
import assert from 'node:assert/strict';
import {test} from 'node:test';
import {misplaced, noises, notApart, wrongHalfWay, wrongLabels} from './checks.mjs';

const kit = 'lentils-quay.yaml';

export function faultTests(bench) {
  // What a check says of the page after its data were changed, with the true bundle at hand.
  const found = async (spoil, check, more) => {
    const made = bench().made(kit, '--without-room');
    const visit = await bench().visit(bench().spoilt(made, spoil, more));
    const findings = await check(visit, made.bundle);
    await visit.leave();
    return findings;
  };
  const solids = async (visit, bundle) => misplaced(bundle, await visit.handle('surfaces'));

  test('things 1 mm off along each axis, and one a millimetre larger, are found out', async () => {
    const findings = await found((data) => {
      [0, 1, 2].forEach((axis) => (data.bundle.items[axis + 1].solids[0].center[axis] += 1));
      const {cylinder, box} = data.bundle.items[0].solids[0];
      (cylinder ?? box).height += 1;
    }, solids);
    assert.equal(findings.length, 4);
    findings.slice(1).forEach((text) => assert.match(text, /is (0\.9\d|1\.0\d) mm off its place/));
  });
  test('a thing drawn twice or not at all is found out', () => {
    const solid = {box: {length: 2, width: 2, height: 2}, center: [0, 0, 0], rotation: [[1, 0, 0], [0, 1, 0], [0, 0, 1]]};
    const bundle = {items: [{id: 'a', copy: 1, solids: [solid]}]};
    const surface = {id: 'a', copy: 1, solid: 0, visible: true, min: [-1, -1, -1], max: [1, 1, 1]};
    assert.deepEqual(misplaced(bundle, [surface]), []);
    assert.deepEqual(misplaced(bundle, []), ['a 1: solid 0 is drawn 0 times']);
    assert.deepEqual(misplaced(bundle, [surface, surface]), ['a 1: solid 0 is drawn 2 times']);
    assert.deepEqual(misplaced(bundle, [{...surface, visible: false}]), ['a 1: solid 0 is not seen']);
  });
  test('steps from the wrong side, and things that are not pulled apart, are found out', async () => {
    const findings = await found(
      (data) => {
        const {steps} = data.bundle;
        steps[0].direction = steps[0].direction.map((v) => -v);
        steps[1].direction = [1, 0, -1];
      },
      async (visit, bundle) => {
        const whole = notApart(bundle, await visit.handle('surfaces'));
        const {seen} = await visit.walk(bundle.steps.length);
        return {whole, steps: [0, 1].map((k) => wrongHalfWay(bundle, seen[k].halfWay, k))};
      },
    );
    assert.ok(findings.whole.length > 0);
    assert.match(findings.steps[0][0], /not before its place/);
    assert.ok(findings.steps[1].some((text) => /beside its way/.test(text)));
  });
  test('a wrong name, requests and errors are found out', async () => {
    const more = '<img src="no-such-picture.png" alt=""><script>console.error("alas")</script>';
    const findings = await found(
      (data) => (data.words.items[0].name = 'Nonsense'),
      async (visit, bundle) => {
        const {labels, field} = await visit.labels();
        return [...wrongLabels([bundle.items[0].name], labels, field), ...noises(visit.heard)];
      },
      more,
    );
    assert.match(findings[0], /no label says/);
    assert.ok(findings.some((text) => /asked for .*no-such-picture/.test(text)));
    assert.ok(findings.includes('alas'));
  });
  test('labels over one another or outside are found out', () => {
    const place = {left: 0, right: 50, top: 0, bottom: 20};
    const beside = {text: 'b', ...place, left: 40, right: 90};
    const over = wrongLabels([], [{text: 'a', ...place}, beside], {...place, right: 100});
    assert.deepEqual(over, ['a lies over b']);
    const outside = wrongLabels([], [{text: 'a', ...place}], {...place, right: 30});
    assert.deepEqual(outside, ['a is not within the picture']);
  });
}
