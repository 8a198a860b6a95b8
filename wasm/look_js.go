package main

import "steelyard/internal/scene"

func look(width, height float64) (*scene.Scene, *scene.Palette) {
	return &scene.Scene{Width: width, Height: height}, &scene.Light
}
