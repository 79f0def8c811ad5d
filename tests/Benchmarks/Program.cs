using BenchmarkDotNet.Running;
using LubeController.Benchmarks;

if (args is ["spin"])
    SpinComparison.Run();
else
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
