package page_test

import (
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page/browser"
)

// Served over https the page keeps itself: it opens again when the server is gone. From a
// file no such thing is registered.
func TestOffline(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	server := httptest.NewTLSServer(http.FileServer(http.Dir(filepath.Dir(browser.Build(t)))))
	defer server.Close()
	p := browser.Start(t)
	p.Run(t, chromedp.Navigate(server.URL+"/forel.html"))
	p.Wait(t, settled)
	p.Wait(t, `navigator.serviceWorker.controller !== null`)
	server.CloseClientConnections()
	server.Close()
	p.Run(t, network.ClearBrowserCache(), chromedp.Reload())
	p.Wait(t, settled)
	assert.Contains(t, told(t, p, "#verdict"), "The book")

	q := opened(t)
	require.False(t, browser.Value[bool](t, q, `navigator.serviceWorker.getRegistrations().then((r) => r.length > 0, () => false)`))
}
