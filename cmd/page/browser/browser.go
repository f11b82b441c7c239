// Package browser opens the page in a real browser, for tests: Chromium without a
// window and without a network.
package browser

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Page is the page as it is open in a browser.
type Page struct {
	Context   context.Context
	Downloads string // the folder that saved files come to
	Close     func() // closes the tab, and of a browser of its own that too

	storage  cdp.BrowserContextID // that its windows share
	mu       sync.Mutex
	requests []string
	errors   []string
}

// names are what Chromium goes by.
var names = []string{"chromium", "chromium-browser", "google-chrome"}

// Find returns the browser's program. Where there is none the test is skipped, but with
// CI set in the environment it fails. It is skipped in a short run too.
func Find(t testing.TB) string {
	t.Helper()
	if testing.Short() {
		t.Skip("a short run: the page is tried in a browser by make test CI=true")
	}
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			return path
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatal("no Chromium here to open the page in")
	}
	t.Skip("no Chromium here to open the page in")
	return ""
}

var folder string // of the page, once it is built

var built = sync.OnceValues(func() (file string, err error) {
	if folder, err = os.MkdirTemp("", "forel-page"); err != nil {
		return "", err
	}
	file = filepath.Join(folder, "forel.html")
	if out, err := exec.Command("go", "run", "forel/cmd/page/build", "-o", file).CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return file, nil
})

// Build makes the page, once for all tests of a run, and returns the file. FOREL_PAGE
// names one that is made already.
func Build(t testing.TB) string {
	t.Helper()
	if file := os.Getenv("FOREL_PAGE"); file != "" {
		return file
	}
	file, err := built()
	require.NoError(t, err)
	return file
}

// shared is the browser that the tests of a run share.
var shared struct {
	once sync.Once
	ctx  context.Context
	stop func()
	err  error
}

// Main runs the tests of a package, and then ends what they share.
func Main(m *testing.M) int {
	code := m.Run()
	if shared.stop != nil {
		shared.stop()
	}
	if folder != "" {
		os.RemoveAll(folder)
	}
	return code
}

// launch starts a browser with the network off.
func launch(program string, more ...chromedp.ExecAllocatorOption) (ctx context.Context, stop func(), err error) {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("proxy-server", "127.0.0.1:9"),     // the port of the protocol discard: nobody answers
		chromedp.Flag("ignore-certificate-errors", true), // of a server of the test's own
	)
	allocated, free := chromedp.NewExecAllocator(context.Background(), append(options, more...)...)
	ctx, end := chromedp.NewContext(allocated)
	return ctx, func() { end(); free() }, chromedp.Run(ctx)
}

// Start opens a tab that shares nothing with others and has not seen the page yet, in
// the browser that all tests share.
func Start(t testing.TB) *Page {
	t.Helper()
	program := Find(t)
	shared.once.Do(func() {
		// What runs for seconds is not worth compiling twice, the second time for speed.
		shared.ctx, shared.stop, shared.err = launch(program, chromedp.Flag("js-flags", "--liftoff-only"))
	})
	require.NoError(t, shared.err)
	return tab(t, shared.ctx, func() {}, "")
}

// Cold opens a file in a browser that was just started, for benchmarks.
func Cold(t testing.TB, file string) *Page {
	t.Helper()
	ctx, stop, err := launch(Find(t))
	t.Cleanup(stop)
	require.NoError(t, err)
	p := tab(t, ctx, stop, "")
	p.Run(t, chromedp.Navigate("file://"+file))
	return p
}

// Beside opens a file in another window that shares a page's storage.
func (p *Page) Beside(t testing.TB, file string) *Page {
	t.Helper()
	q := tab(t, shared.ctx, func() {}, p.storage)
	q.Run(t, chromedp.Navigate("file://"+file))
	return q
}

// tab opens a tab of a window of its own, and listens to it. Its storage is that given, or
// its own.
func tab(t testing.TB, in context.Context, stop func(), own cdp.BrowserContextID) *Page {
	t.Helper()
	p := &Page{Downloads: t.TempDir()}
	var id target.ID
	ofBrowser := func(do func(ctx context.Context) error) chromedp.Action {
		return chromedp.ActionFunc(func(ctx context.Context) error {
			return do(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser))
		})
	}
	require.NoError(t, chromedp.Run(in, ofBrowser(func(ctx context.Context) (err error) {
		if own == "" {
			if own, err = target.CreateBrowserContext().Do(ctx); err != nil {
				return err
			}
		}
		p.storage = own
		id, err = target.CreateTarget("about:blank").WithBrowserContextID(own).WithNewWindow(true).Do(ctx)
		return err
	})))
	ctx, end := chromedp.NewContext(in, chromedp.WithTargetID(id))
	t.Cleanup(end)
	p.Close = func() { end(); stop() }
	ctx, late := context.WithTimeout(ctx, 3*time.Minute)
	t.Cleanup(late)
	p.Context = ctx
	chromedp.ListenTarget(ctx, func(event any) {
		p.mu.Lock()
		defer p.mu.Unlock()
		switch e := event.(type) {
		case *network.EventRequestWillBeSent:
			p.requests = append(p.requests, e.Request.URL)
		case *runtime.EventExceptionThrown:
			p.errors = append(p.errors, e.ExceptionDetails.Error())
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.APITypeError {
				p.errors = append(p.errors, fmt.Sprint(e.Args))
			}
		}
	})
	p.Run(t, network.Enable(), runtime.Enable(), ofBrowser(func(ctx context.Context) error {
		return browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(p.Downloads).
			WithBrowserContextID(own).WithEventsEnabled(true).Do(ctx)
	}))
	return p
}

// Open opens a file in a tab, from its folder as a double click does.
func Open(t testing.TB, file string) *Page {
	t.Helper()
	p := Start(t)
	p.Run(t, chromedp.Navigate("file://"+file))
	return p
}

// Run does things in the page, one after the other.
func (p *Page) Run(t testing.TB, actions ...chromedp.Action) {
	t.Helper()
	require.NoError(t, chromedp.Run(p.Context, actions...))
}

// Value returns what an expression of JavaScript comes to.
func Value[T any](t testing.TB, p *Page, expression string) (out T) {
	t.Helper()
	p.Run(t, chromedp.Evaluate(expression, &out, func(e *runtime.EvaluateParams) *runtime.EvaluateParams { return e.WithAwaitPromise(true) }))
	return out
}

// Wait waits until an expression of JavaScript is true.
func (p *Page) Wait(t testing.TB, expression string) {
	t.Helper()
	p.Run(t, chromedp.Poll(expression, nil, chromedp.WithPollingTimeout(time.Minute)))
}

// Type types text into a blank in the place of what stands there, key by key.
func (p *Page) Type(t testing.TB, blank, text string) {
	t.Helper()
	p.Run(t, chromedp.Focus(blank), chromedp.Evaluate(fmt.Sprintf("document.querySelector(%q).select()", blank), nil), chromedp.SendKeys(blank, text))
}

// Saved waits for a file that the page saves and returns it.
func (p *Page) Saved(t testing.TB, name string) []byte {
	t.Helper()
	file := filepath.Join(p.Downloads, name)
	require.Eventually(t, func() bool {
		entries, _ := filepath.Glob(filepath.Join(p.Downloads, "*.crdownload"))
		_, err := os.Stat(file)
		return err == nil && len(entries) == 0
	}, time.Minute, 20*time.Millisecond, "%s is not saved", name)
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	return data
}

// Requests returns the addresses that were asked for.
func (p *Page) Requests() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.requests)
}

// Errors returns what went wrong in the page's scripts.
func (p *Page) Errors() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.errors)
}
