using System;
using LubeController.Cli;
using LubeController.Scripts.Running;

return new Lubebench(new EmulatedBench(), Console.Out, Console.Error, ProgressLine.Terminal).Run(args);
