/** The app's own build, with the bench's module beside its first lines; `python -m tests.bench` says where it goes. */
import app from "../../webapp/vite.config.ts";

const HAND = '\nimport "../../tests/bench/page.ts";\n';

const hand = {
  name: "bench",
  transform: (code: string, id: string) => (id.endsWith("/src/main.tsx") ? { code: code + HAND, map: null } : null),
};

export default { ...app, plugins: [...(app.plugins ?? []), hand] };
