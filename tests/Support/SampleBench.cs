using LubeController.Files.Quantities;
using LubeController.Scripts.Running;
using LubeController.Scripts.Steps;

namespace LubeController.Tests.Support;

/// <summary>A fake bench with a few signals of each sort, each at rest from the start.</summary>
public static class SampleBench
{
    /// <summary>Words of the signal <c>phase</c>.</summary>
    public static readonly string[] Phases = ["rest", "dose", "retry-pause", "prime", "stopped", "failed"];

    public static FakeScriptBench Make() => Empty()
        .At(0, "alarm.divider-stalled", 0)
        .At(0, "phase", 0)
        .At(0, "output.pump", 0)
        .At(0, "counter.doses", 0)
        .At(0, "switch.piston-4", 1)
        .At(0, "pressure.line", 0)
        .At(0, "delivered.gland", 0);

    /// <summary>The same without any point recorded.</summary>
    public static FakeScriptBench Empty() => new FakeScriptBench()
        .WithOnOff("alarm.divider-stalled")
        .WithWord("phase", Phases)
        .WithOnOff("output.pump")
        .WithCount("counter.doses")
        .WithOnOff("switch.piston-4")
        .WithLinear("pressure.line", "Pa")
        .WithLinear("delivered.gland", "m3")
        .WithFault("outlet-blocked", ["front-left", "gland"])
        .WithFault("inlet-blocked", [])
        .WithFault("cycle-switch-stuck-on", ["piston-4"])
        .With(new BenchFault("pump-worn", [], new QuantityRange(UnitFamily.Ratio, 0, 100, "%"), 0.5) { HarmlessMagnitude = 1 })
        .WithFault("line-leak", [], new QuantityRange(UnitFamily.Flow, 0.1, 1000, "cm3/min"));
}
