// Runs in the page under test, once the checker is loaded: reports to the frame around it, one finding
// a line, with tabs between its parts. The first is the name of the frame.
(async () => {
  const width = innerWidth;
  const lines = [];
  const finding = (...parts) => lines.push([name, "finding", width, ...parts].join("\t"));
  try {
    const result = await axe.run(document);
    for (const { id, help, nodes } of result.violations) {
      for (const node of nodes) finding(id, help, node.target.join(" "));
    }
    const wide = document.documentElement.scrollWidth;
    if (wide > width) finding("sideways-scroll", "The page must not be wider than the screen", `${wide} px`);
    lines.push([name, "checked", width, result.passes.length].join("\t"));
  } catch (error) {
    finding("checker", "The checker must run to its end", String(error));
  }
  parent.postMessage(lines.join("\n"), "*");
})();
