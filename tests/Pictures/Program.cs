using System;
using System.IO;
using LubeController.Emulator;
using LubeController.Pictures;
using LubeController.Scripts.Reading;
using LubeController.Scripts.Running;
using LubeController.Scripts.ScriptFiles;
using LubeController.Scripts.SettingsFiles;

string? root = AppContext.BaseDirectory;
while (root != null && !File.Exists(Path.Combine(root, "LubeController.sln")))
    root = Path.GetDirectoryName(root);
if (root == null)
{
    Console.Error.WriteLine($"no LubeController.sln above {AppContext.BaseDirectory}: run this inside the repository");
    return 2;
}

var problems = new ProblemList();
BenchScript? script = new ScriptReader(new EmulatedBench(), RestRules.All).Read(Path.Combine(root, "hil-scripts", "faults", "outlet-blocked.yaml"), problems);
if (script == null)
{
    Console.Error.WriteLine(string.Join(Environment.NewLine, problems.All));
    return 2;
}

Trace trace = new EmulatedBench().Run(script).Trace;
string picture = Path.Combine(root, "host-sim", "pictures", "outlet-blocked.png");
Directory.CreateDirectory(Path.GetDirectoryName(picture)!);
DosePicture.Draw(trace, picture);
Console.WriteLine(Path.GetRelativePath(root, picture));
return 0;
