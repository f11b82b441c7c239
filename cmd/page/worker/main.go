//go:build js && wasm

// Command worker is the program that runs beside the page in a browser. It stays
// running and answers what package page answers: the script around it calls
// forel(request, progress) with the request as bytes of JSON and gets an array, the
// response as bytes of JSON first and then the bytes of each file.
package main

import (
	"context"
	"syscall/js"

	"forel/cmd/page"
)

func main() {
	desk := &page.Desk{}
	answer := js.FuncOf(func(_ js.Value, args []js.Value) any {
		request := make([]byte, args[0].Length())
		js.CopyBytesToGo(request, args[0])
		response, files := desk.JSON(context.Background(), request, func(fraction float64) { args[1].Invoke(fraction) })
		out := js.Global().Get("Array").New()
		for _, data := range append([][]byte{response}, files...) {
			array := js.Global().Get("Uint8Array").New(len(data))
			js.CopyBytesToJS(array, data)
			out.Call("push", array)
		}
		return out
	})
	js.Global().Call("ready", answer)
	select {}
}
