// SPDX-License-Identifier: GPL-3.0-or-later
// The ways to use a page: by keyboard alone, by touch on a phone, in the dark, without WebGL; and its two questions.
import assert from 'node:assert/strict';
import {execFileSync} from 'node:child_process';
import {test} from 'node:test';
import {boxOf, drawn, noises, wrongLabels} from './checks.mjs';

const kit = 'lentils-quay.yaml';

// The element that has the focus, and whether one sees that.
const focused = (page) =>
  page.evaluate(() => {
    const node = document.querySelector('.tuckwright-picture-host').shadowRoot.activeElement;
    if (!node) {
      return null;
    }
    const {outlineStyle, outlineWidth} = getComputedStyle(node);
    const name = node.getAttribute('aria-label') ?? node.labels?.[0]?.textContent ?? node.textContent;
    return {name, tag: node.tagName, isSeen: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2};
  });

async function tabTo(page, isWanted) {
  for (let k = 0; k < 80; k += 1) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    if (now) {
      assert.ok(now.isSeen, `the focus on ${now.name} is seen`);
      assert.ok(now.name.length > 0, `a ${now.tag} has a name`);
    }
    if (now && isWanted(now)) {
      return now;
    }
  }
  throw new Error('the Tab key does not lead there');
}

async function byKeys(visit, bundle) {
  const {page} = visit;
  const keys = async (...all) => {
    for (const key of all) {
      await page.keyboard.press(key);
    }
    await visit.settle();
  };
  const [first] = bundle.items;
  await tabTo(page, ({tag}) => tag === 'CANVAS');
  const before = await visit.handle('onCanvas', first.id, first.copy);
  await keys('ArrowLeft', 'ArrowLeft', 'ArrowUp', '+');
  assert.notDeepEqual(await visit.handle('onCanvas', first.id, first.copy), before);
  await tabTo(page, ({name}) => name === 'Packing step');
  await keys('Home');
  assert.equal((await visit.handle('state')).moment, 0);
  await keys('PageUp', 'PageUp');
  assert.equal((await visit.handle('state')).moment, 2);
  await keys('ArrowRight');
  assert.ok((await visit.handle('state')).moment > 2, 'arrow keys move it by parts of a step');
  await keys('PageDown');
  assert.equal((await visit.handle('state')).moment, 2);
  await tabTo(page, ({name}) => name === 'Pull apart');
  await keys('End');
  assert.equal((await visit.handle('state')).apart, 1);
  await tabTo(page, ({name}) => name === 'level');
  await keys('Enter');
  assert.equal((await visit.handle('state')).cut.axis, 2);
  await tabTo(page, ({name}) => name === 'Where the cut is');
  await keys('ArrowRight');
  assert.ok((await visit.handle('state')).cut.share > 0.5);
  await tabTo(page, ({name}) => /^1 /.test(name));
  await keys('Enter');
  assert.equal((await visit.handle('state')).chosen, 0);
  assert.match(await page.locator('.told').textContent(), /Weight.*Play/);
  await tabTo(page, ({name}) => name === 'What sets the size');
  await keys('Enter');
  await tabTo(page, ({name}) => name.startsWith('Height'));
  await keys('Space');
  assert.equal((await visit.handle('state')).chain, 1);
  await keys('Escape');
  assert.equal((await visit.handle('state')).chain, null);
}

async function byFingers(visit) {
  const {page} = visit;
  const overflow = await page.evaluate(() => document.scrollingElement.scrollWidth - window.innerWidth);
  assert.ok(overflow <= 0, `${overflow} px stick out sideways`);
  const box = await page.locator('canvas').boundingBox();
  assert.ok(box.width > 300 && box.height > 200, 'the picture is large enough');
  for (const button of await page.locator('.panel button').all()) {
    if (await button.isVisible()) {
      const size = await button.boundingBox();
      assert.ok(size.height >= 36 && size.width >= 36, `${await button.textContent()} is large enough for a finger`);
    }
  }
  const {labels, field} = await visit.labels();
  assert.ok(labels.length > 0);
  assert.deepEqual(wrongLabels([], labels, field), []);
  const spot = await page.evaluate(() => {
    const at = window.tuckwrightPicture.surfaces().map(({id, copy}) => window.tuckwrightPicture.onCanvas(id, copy));
    return at.find(([x, y]) => window.tuckwrightPicture.thingAt(x, y));
  });
  await page.touchscreen.tap(box.x + spot[0], box.y + spot[1]);
  await visit.settle();
  assert.notEqual((await visit.handle('state')).chosen, null);
  assert.match(await page.locator('.told').textContent(), /Play/);
  const [told, sheet] = [await page.locator('.told').boundingBox(), await page.locator('.sheet').boundingBox()];
  assert.ok(told.y >= sheet.y + sheet.height && told.y + told.height <= 740, 'what is told is not under the picture');
  await drag(visit, await page.locator('canvas').boundingBox());
  await visit.press('Back');
  assert.equal((await visit.handle('state')).moment, (await visit.handle('steps')) - 1);
}

// One finger turns the picture, two bring it nearer.
async function drag(visit, box) {
  const protocol = await visit.context.newCDPSession(visit.page);
  const touch = (type, ...points) =>
    protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map(([x, y], id) => ({x: box.x + x, y: box.y + y, id})),
    });
  const places = () =>
    visit.page.evaluate(() =>
      window.tuckwrightPicture.surfaces().map(({id, copy}) => window.tuckwrightPicture.onCanvas(id, copy)),
    );
  const before = await places();
  await touch('touchStart', [100, 120]);
  await touch('touchMove', [130, 122]);
  await touch('touchMove', [170, 125]);
  await touch('touchEnd');
  await visit.settle();
  const turned = await places();
  assert.notDeepEqual(turned, before, 'one finger turns it');
  const width = (points) => Math.max(...points.map(([x]) => x)) - Math.min(...points.map(([x]) => x));
  await touch('touchStart', [140, 120], [180, 120]);
  await touch('touchMove', [120, 120], [200, 120]);
  await touch('touchMove', [90, 120], [230, 120]);
  await touch('touchEnd');
  await visit.settle();
  assert.ok(width(await places()) > width(turned) * 1.2, 'two fingers bring it nearer');
}

async function inTheDark(visit) {
  const shade = await visit.page.evaluate(() => {
    const host = document.querySelector('.tuckwright-picture-host');
    return [getComputedStyle(document.body).backgroundColor, getComputedStyle(host).backgroundColor].map((text) =>
      Math.max(...text.match(/\d+/g).slice(0, 3).map(Number)),
    );
  });
  assert.ok(shade.every((value) => value < 60), `dark paper: ${shade}`);
  assert.ok((await visit.shareDrawn()) > 0.02);
  await visit.page.emulateMedia({colorScheme: 'light'});
  await visit.page.waitForFunction(() => {
    const host = document.querySelector('.tuckwright-picture-host');
    return Math.min(...getComputedStyle(host).backgroundColor.match(/\d+/g).slice(0, 3).map(Number)) > 200;
  }); // it follows a change
}

async function questions(visit, saved, picked) {
  const {page} = visit;
  const program = process.env.TUCKWRIGHT_PROGRAM;
  const room = JSON.parse(execFileSync(program, ['room', saved, '--effort', 'quick', '--json', '-']));
  const size = JSON.parse(execFileSync(program, ['size', saved, '--json', '-']));
  await page.getByText('Room left', {exact: true}).click();
  await page.getByText(/^round, standing/).first().click();
  await visit.settle();
  const place = (await visit.handle('state')).room[0];
  const {cylinder, center} = room.rooms[place].standing;
  const expected = boxOf({cylinder, center, rotation: [[1, 0, 0], [0, 1, 0], [0, 0, 1]]});
  const ghost = await visit.handle('room');
  for (const i of [0, 1, 2]) {
    assert.ok(Math.abs(ghost.min[i] - expected.min[i]) < drawn && Math.abs(ghost.max[i] - expected.max[i]) < drawn);
  }
  await page.getByText('What sets the size', {exact: true}).click();
  for (const [k, chain] of size.chains.entries()) {
    await page.locator('details').last().locator('li button').nth(k).click();
    await visit.settle();
    const points = await visit.handle('rule');
    assert.equal(points.length, 3 * (2 + 2 * (chain.stretches.length + 1)), 'a tick at each contact');
    const long = Math.hypot(...[0, 1, 2].map((i) => points[3 + i] - points[i]));
    assert.ok(Math.abs(long - chain.mm) < 1e-3, `${chain.dimension}: the line is ${long} mm long`);
    assert.equal(await visit.handle('room'), null, 'one question at a time');
    assert.ok((await visit.labels()).labels.some(({text}) => text.includes('mm')));
  }
  picked();
}

export function handTests(bench) {
  const look = async (options, use, browser) => {
    const made = bench().made(kit);
    const visit = await bench().visit(made.html, options, browser);
    await use(visit, made);
    assert.deepEqual(noises(visit.heard), []);
    await visit.leave();
  };
  test('all of it by keyboard alone', () => look({}, (visit, {bundle}) => byKeys(visit, bundle)));
  test('by touch, on a phone', () =>
    look({viewport: {width: 360, height: 740}, hasTouch: true, isMobile: true}, (visit) => byFingers(visit)));
  test('in the dark', () => look({colorScheme: 'dark'}, (visit) => inTheDark(visit)));
  test('room left and what sets the size are drawn where they are', async () => {
    let done = false;
    await look({}, (visit, {saved}) => questions(visit, saved, () => (done = true)));
    assert.ok(done);
  });
  test('the styles of a larger page do not reach it', async () => {
    const made = bench().made(kit, '--without-room');
    const style = '<style>* {font-size: 60px; color: red; text-transform: uppercase} button, .label {display: none}</style>';
    const visit = await bench().visit(bench().spoilt(made, () => {}, style));
    const look = (name) =>
      visit.page.locator(name).first().evaluate((node) => {
        const {fontSize, color, textTransform} = getComputedStyle(node);
        return [fontSize, color === 'rgb(255, 0, 0)', textTransform];
      });
    assert.deepEqual(await look('body > p'), ['60px', true, 'uppercase']);
    assert.deepEqual(await look('.step'), ['15px', false, 'none']);
    assert.ok(await visit.page.getByRole('button', {name: 'Next'}).or(visit.page.getByText('From the start')).isVisible());
    assert.ok((await visit.labels()).labels.every(({left, right}) => right > left));
    await visit.leave();
  });
  test('without WebGL it says so, and tells the rest', async () => {
    await look(
      {},
      async ({page}) => {
        assert.match(await page.getByRole('alert').textContent(), /WebGL is missing/);
        await page.getByRole('button', {name: 'From the start'}).click();
        await page.getByRole('button', {name: 'Next'}).click();
        assert.match(await page.locator('.number').textContent(), /^Step 1 of/);
        await page.locator('ol.things button').first().click();
        assert.match(await page.locator('.told').textContent(), /Weight/);
      },
      await bench().blindBrowser(),
    );
  });
  test('with motion, a step goes in before one\'s eyes', () =>
    look({reducedMotion: 'no-preference'}, async (visit) => {
      await visit.press('From the start');
      const begun = await visit.page.evaluate(() => {
        const {shadowRoot: tree} = document.querySelector('.tuckwright-picture-host');
        [...tree.querySelectorAll('button')].find((button) => button.textContent === 'Next').click();
        return window.tuckwrightPicture.state().moment;
      });
      assert.ok(begun > 0 && begun < 1, `it has begun, and is not done at once: ${begun}`);
      await visit.page.waitForFunction(() => window.tuckwrightPicture.state().moment === 1);
    }));
}
