using System;
using System.IO;
using LubeController.Emulator;
using LubeController.Pictures;
using LubeController.Scripts.Running;
using LubeController.Tests.Support;

Trace trace = new EmulatedBench().Run(Repository.Read("hil-scripts/faults/outlet-blocked.yaml")).Trace;
string picture = Path.Combine(Repository.Root, "host-sim", "pictures", "outlet-blocked.png");
Directory.CreateDirectory(Path.GetDirectoryName(picture)!);
DosePicture.Draw(trace, picture);
Console.WriteLine(Path.GetRelativePath(Repository.Root, picture));
