/* Runs a lesson when it is opened, and again when its kernel has been restarted.

Only a notebook of the workbook's, and only while its code is as delivered or has been run here by
hand before. Every other one waits for its button: whoever opens a file has not yet agreed to run it.
Written by hand as JupyterLab's own builder would write it, so that nothing has to be built. */
(() => {
  const NAME = "workbook-lessons";
  const HERE = document.currentScript.src;
  const BUTTON = "Run this lesson";
  const WAITS =
    "This lesson has not started by itself: its code is not as it was delivered, and has not been " +
    "run on this computer. If you know who wrote it: ";
  // What runs everything after a restart asks for it within this time. [ms]
  const MOMENT = 300;

  /* What may run unasked: digests that came with the workbook, and those kept beside the student's
  own work. */
  class Known {
    constructor(settings) {
      this.settings = settings;
      this.delivered = fetch(new URL("delivered.json", HERE), {cache: "no-cache"})
        .then(answer => answer.json())
        .then(Object.values, () => []);
      this.here = this.fetched();
    }

    async fetched() {
      try {
        return JSON.parse((await this.settings.fetch(`${NAME}:run`)).raw || "{}").run ?? [];
      } catch {
        return [];
      }
    }

    async has(digest) {
      const all = await Promise.all([this.delivered, this.here]);
      return all.flat().includes(digest);
    }

    async keep(digest) {
      const kept = [...new Set([...(await this.fetched()), digest])];
      this.here = Promise.resolve(kept);
      await this.settings.save(`${NAME}:run`, JSON.stringify({run: kept}));
    }
  }

  class Lesson {
    constructor(app, {notebook, lumino, ui}, known, panel, context) {
      Object.assign(this, {app, lumino, known, panel, context, actions: notebook.NotebookActions});
      this.session = panel.sessionContext;
      this.ran = new Set();
      this.running = this.restarted = this.scheduled = this.untouched = false;
      const onClick = () => this.run();
      const tip = "Run every cell of this notebook from the top";
      panel.toolbar.insertItem(10, NAME, new ui.ToolbarButton({label: BUTTON, tooltip: tip, onClick}));
      this.session.statusChanged.connect((_, status) => this.follow(status));
      this.actions.executed.connect(this.executed, this);
      this.actions.executionScheduled.connect(this.heard, this);
      panel.disposed.connect(() => {
        this.actions.executed.disconnect(this.executed, this);
        this.actions.executionScheduled.disconnect(this.heard, this);
      });
    }

    get cells() {
      return [...this.context.model.cells];
    }

    get sources() {
      return this.cells.filter(cell => cell.type === "code").map(cell => cell.sharedModel.getSource());
    }

    async digest() {
      // A browser has no digests for a page that came unencrypted from another machine.
      if (!globalThis.crypto?.subtle) return "";
      const text = new TextEncoder().encode(JSON.stringify(this.sources));
      const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", text));
      return Array.from(bytes, byte => byte.toString(16).padStart(2, "0")).join("");
    }

    /* Whether this is a notebook of the workbook's, in its own folder. */
    get ours() {
      const {contents} = this.app.serviceManager;
      const flagged = this.context.model.sharedModel.getMetadata("ours");
      return Boolean(flagged) && contents.driveName(this.context.path) === "";
    }

    /* Start by itself once it is looked at: a page brings back what was open yesterday, too. */
    async open() {
      const {shell, restored} = this.app;
      await this.context.ready;
      // Choosing its kernel alone counts as a change of the notebook.
      this.untouched = !this.context.model.dirty;
      await restored;
      if (!this.ours || this.panel.isDisposed) return;
      const seen = () => {
        if (shell.currentWidget !== this.panel) return;
        shell.currentChanged.disconnect(seen);
        shell.collapseLeft();
        shell.collapseRight();
        this.start();
      };
      shell.currentChanged.connect(seen);
      this.panel.disposed.connect(() => shell.currentChanged.disconnect(seen));
      seen();
    }

    async start() {
      if (await this.known.has(await this.digest())) await this.run();
      else this.wait();
    }

    wait() {
      const node = document.createElement("div"), button = document.createElement("button");
      node.setAttribute("role", "status");
      node.style.cssText =
        "min-height: 2.4em; padding: .4em 1em; font-size: var(--jp-ui-font-size1);" +
        "background: var(--jp-warn-color3, #fff3cd); color: #222; overflow: visible";
      button.textContent = BUTTON;
      button.onclick = () => this.run();
      node.append(WAITS, button);
      this.waiting?.dispose();
      this.waiting = new this.lumino.Widget({node});
      this.panel.contentHeader.addWidget(this.waiting);
    }

    /* Run every cell and stay at the top; a notebook that nobody has changed still counts so. */
    async run() {
      if (this.running) return;
      this.running = true;
      this.waiting?.dispose();
      const {model} = this.context, {content} = this.panel;
      const written = () => JSON.stringify(this.cells.map(cell => cell.sharedModel.getSource()));
      const before = written(), clean = this.untouched || !model.dirty;
      this.untouched = false;
      try {
        // Yesterday's sliders belong to a kernel that is gone: they would say so.
        this.cells.forEach(cell => cell.type === "code" && cell.clearExecution());
        await this.session.ready;
        const codes = content.widgets.filter(cell => cell.model.type === "code");
        await this.actions.runCells(content, codes, this.session);
        if (clean && !this.panel.isDisposed && before === written()) model.dirty = false;
      } finally {
        this.running = false;
      }
    }

    /* What was wholly run here is known from now on. */
    async executed(_, {notebook, cell}) {
      if (notebook !== this.panel.content || cell.model.type !== "code") return;
      this.ran.add(cell.model.sharedModel.getSource());
      if (!this.ours || !this.sources.every(source => this.ran.has(source))) return;
      const digest = await this.digest();
      if (digest && !(await this.known.has(digest))) await this.known.keep(digest);
    }

    heard(_, {notebook}) {
      if (notebook === this.panel.content) this.scheduled = true;
    }

    /* After a restart the sliders are gone; a lesson that ended its own kernel is left alone. */
    follow(status) {
      if (status === "restarting" || status === "autorestarting") {
        this.restarted ||= this.session.isRestarting || !this.running;
      } else if (status === "idle" && this.restarted) {
        this.restarted = this.scheduled = false;
        setTimeout(() => {
          if (this.ours && !this.scheduled && !this.panel.isDisposed) this.start();
        }, MOMENT);
      }
    }
  }

  const plugin = modules => ({
    id: `${NAME}:run`,
    autoStart: true,
    activate: app => {
      const known = new Known(app.serviceManager.settings);
      app.docRegistry.addWidgetExtension("Notebook", {
        createNew: (panel, context) => void new Lesson(app, modules, known, panel, context).open(),
      });
    },
  });

  // How JupyterLab shares its own modules, and asks an extension for what it adds.
  let shared;
  const fetched = async name => {
    const versions = Object.values(shared[name]);
    return (await (versions.find(version => version.loaded) ?? versions[0]).get())();
  };
  (globalThis._JUPYTERLAB ??= {})[NAME] = {
    init: scope => { shared = scope; },
    get: async () => {
      const names = ["@jupyterlab/notebook", "@lumino/widgets", "@jupyterlab/ui-components"];
      const [notebook, lumino, ui] = await Promise.all(names.map(fetched));
      return () => plugin({notebook, lumino, ui});
    },
  };
})();
