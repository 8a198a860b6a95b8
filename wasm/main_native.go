//go:build !js

package main

import "log"

func main() { log.Fatal("this program runs in a browser: go run ./internal/site serve") }
