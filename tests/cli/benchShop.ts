import { join } from 'node:path';
import { commit, madeOnce, newRepository, pack, put, SHOP_NAME } from '../shell/gitShop.ts';

/** With a space and letters beyond ASCII, as people name folders. */
export const PUMP = 'engines/pump é no 2';

export const readings = (stage: string, date: string, clearances: string): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\nreadings:\n  - { measure: main_bearing_clearance, with: bore, at: { ${clearances} } }\n`;

const ENGINE = (name: string): string =>
  `kind: engine\nname: ${name}\nlayout: { cylinders: 1, mains: 2, crankpins: 1 }\n`;

export const FAMILY =
  'kind: limits\nsource: invented\nlimits: { main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } } }\n';

/**
 * Two engines in three commits: a teardown that is out at main 2, a rebuild, then only the other engine. The second
 * engine has limits of its own; the first extends a shared one that lies in no folder above it.
 */
export function makeBenchShop(parent: string): string {
  const shop = join(parent, SHOP_NAME);
  copyShop(shop);
  return shop;
}

const copyShop = madeOnce((shop) => {
  newRepository(shop);
  put(shop, 'shop.yaml', 'kind: shop\nunits: { length: in }\n');
  put(
    shop,
    'instruments.yaml',
    'kind: instruments\ninstruments:\n  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }\n',
  );
  put(shop, 'limits/family.yaml', FAMILY);
  put(shop, `${PUMP}/engine.yaml`, ENGINE('Pump é no. 2'));
  put(
    shop,
    `${PUMP}/limits.yaml`,
    'kind: limits\nsource: invented\nextends: ../../limits/family.yaml\nlimits: {}\n',
  );
  put(shop, `${PUMP}/sessions/teardown.yaml`, readings('teardown', '2026-02-03', '1: 0.0040, 2: 0.0056'));
  put(shop, 'engines/mill/engine.yaml', ENGINE('Mill'));
  put(shop, 'engines/mill/limits.yaml', FAMILY);
  put(shop, 'engines/mill/service.yaml', readings('service', '2026-01-05', '1: 0.0030'));
  commit(shop, 'Teardown');
  put(shop, `${PUMP}/sessions/rebuild.yaml`, readings('rebuild', '2026-03-14', '1: 0.0030, 2: 0.0031'));
  commit(shop, 'Rebuild');
  put(shop, 'engines/mill/second.yaml', readings('service', '2026-04-05', '1: 0.0031'));
  commit(shop, 'Mill');
  pack(shop);
});
