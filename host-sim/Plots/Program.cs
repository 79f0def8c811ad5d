using System;
using System.IO;
using LubeController.Plots;
using ScottPlot;

const int Width = 1000;
const int PanelHeight = 420;

// Run from the root of the repository.
string folder = Path.Combine("host-sim", "pictures");
foreach (Picture picture in Album.Pictures)
{
    int height = PanelHeight * picture.Panels.Count;
    Multiplot drawn = Draw(picture);
    string file = Path.Combine(folder, picture.Name);
    drawn.SavePng(file + ".png", Width, height);
    Svg.Save(drawn, file + ".svg", Width, height);
    Console.WriteLine(file + ".svg and .png");
    foreach (Panel panel in picture.Panels)
        Console.WriteLine("  " + Numbers.Of(panel));
}

static Multiplot Draw(Picture picture)
{
    var drawn = new Multiplot();
    drawn.AddPlots(picture.Panels.Count);
    for (int panel = 0; panel < picture.Panels.Count; panel++)
        PanelPlot.Draw(drawn.GetPlot(panel), picture.Panels[panel], picture);
    return drawn;
}
