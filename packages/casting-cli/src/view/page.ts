/** The page of the live view: controls for seed and gap above the job sheet and the templates. No file from elsewhere. */
export function viewPage(nonce: string): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>casting: live view</title>
<style>
body { margin: 0; font: 1rem/1.4 system-ui, Helvetica, Arial, sans-serif; color: #1a1a1a; background: #fff; display: flex; flex-direction: column; height: 100vh; }
header { padding: .4rem 1rem .6rem; background: #f3f1ec; }
h1 { font-size: 1rem; margin: 0 0 .3rem; }
form { display: flex; flex-wrap: wrap; gap: .6rem 1rem; align-items: end; }
label { display: flex; flex-direction: column; font-size: .85rem; }
input { font: inherit; width: 8rem; padding: .2rem .4rem; }
button, select { font: inherit; padding: .3rem .8rem; }
#state { flex: 1 1 20rem; margin: 0; white-space: pre-wrap; overflow-wrap: anywhere; }
#state.wrong, #answer { color: #8a1c00; }
#answer { margin: 0; overflow-wrap: anywhere; }
main { flex: 1; display: flex; min-height: 0; }
iframe { flex: 1; border: 0; }
</style>
</head>
<body>
<header>
<h1>Live view</h1>
<form id="controls">
<label>Seed <input id="seed" inputmode="numeric" autocomplete="off"></label>
<label>Gap <input id="gap" autocomplete="off"></label>
<button type="submit">Show</button>
<button type="button" id="save">Write into the job</button>
<label>Sheet <select id="sheet"></select></label>
<p id="state" role="status">working …</p>
</form>
<p id="answer" role="alert"></p>
</header>
<main>
<iframe id="frame" title="the sheet" src="/sheet/job-sheet.html" sandbox="allow-same-origin"></iframe>
</main>
<script nonce="${nonce}">
const token = ${JSON.stringify(nonce)};
const at = (id) => document.getElementById(id);
let mine = false;
function show(view) {
  at("state").textContent = view.text;
  at("state").className = view.holds ? "" : "wrong";
  if (!mine) { at("seed").value = view.seed; at("gap").value = view.gap; }
  const chosen = at("sheet").value || view.sheets[0];
  at("sheet").replaceChildren(...view.sheets.map((name) => new Option(name, name, false, name === chosen)));
  if (view.holds) at("frame").src = "/sheet/" + encodeURIComponent(at("sheet").value) + "?v=" + view.version;
}
async function send(path) {
  const body = JSON.stringify({ seed: at("seed").value, gap: at("gap").value });
  const answer = await fetch(path, { method: "POST", headers: { "content-type": "application/json", "x-casting": token }, body });
  at("answer").textContent = answer.ok ? "" : await answer.text();
}
at("controls").addEventListener("submit", (event) => { event.preventDefault(); mine = true; send("/show"); });
at("save").addEventListener("click", async () => { await send("/save"); mine = false; });
let last;
at("sheet").addEventListener("change", () => last && show(last));
new EventSource("/events").onmessage = (event) => { last = JSON.parse(event.data); show(last); };
</script>
</body>
</html>
`;
}
