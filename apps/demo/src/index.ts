export { loadDemoShop, type DemoLoad } from './load-demo-shop.js';
export { demoSecret, demoShopId, users as demoUsers, type DemoUser } from './people.js';
export { storyBeginsDaysAgo, storyVehicleId } from './story-van.js';
