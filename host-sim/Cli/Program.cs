using System;
using LubeController.Cli;

return new Lubebench(BuiltInBench.Make(), Console.Out, Console.Error, TerminalProgress.ForThisTerminal()).Run(args);
