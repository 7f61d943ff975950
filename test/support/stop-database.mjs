// After the last integration or end-to-end test: the server of the run stops and removes its folder.
export default async function stopDatabase() {
  const server = globalThis.endfloatTestServer;
  if (server === undefined) return;
  delete globalThis.endfloatTestServer;
  delete process.env.ENDFLOAT_TEST_SERVER;
  server.child.stdin.end();
  await server.ended;
}
