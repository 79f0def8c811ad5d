using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LubeController.Plant.Pistons;
using Xunit;

namespace LubeController.Plant.Tests;

/// <summary>Everything that can be read of a system, line by line and to the bit.</summary>
internal static class Readings
{
    private const int EventsAhead = 20;

    /// <summary>Asserts that two systems show the same, now and, since not all that they keep shows at once, over the next events.</summary>
    public static void AssertSame(LubricationSystem expected, LubricationSystem actual)
    {
        Assert.Equal(Read(expected), Read(actual));
        for (int i = 0; i < EventsAhead && expected.NextEventUs < long.MaxValue; i++)
        {
            long next = expected.NextEventUs;
            expected.AdvanceTo(next);
            actual.AdvanceTo(next);
            Assert.Equal(Read(expected), Read(actual));
        }
    }

    public static IReadOnlyList<string> Read(LubricationSystem system) =>
    [
        Line("time", system.NowUs, system.NextEventUs, system.NextSupplyUs, system.EventCount, system.StepCount, system.TryCount),
        Line("pressures", system.LinePressurePa, system.EndPressurePa, system.TransmitterPressurePa, system.GaugePressurePa, system.LineAirM3),
        Line("secondaries", Each(system.Description.Secondaries.Count, system.SecondaryPressurePa)),
        Line("pump", system.PumpContact, system.MotorTurns, system.PumpFlowM3PerS, system.PumpRevolutions, system.CamAngle, system.OverloadTripped),
        Line("lubricant", system.TemperatureK, system.ViscosityRatio, system.ReservoirContentM3),
        Line("levels", system.LevelLow, system.LevelEmpty, system.PressureSwitchOn, system.VentCoil, system.TransmitterMeaning),
        Line("supply", system.ControlPowered, system.ControlVoltageV, system.ControlBaseVoltageV),
        Line("balance", system.Balance()),
        Line("status", system.Status, system.Waves),
        Line("travels", Each(system.SectionCount, system.PistonTravel)),
        Line("displaced", Each(system.SectionCount, system.PistonDisplacedM3)),
        Line("strokes to L", Each(system.SectionCount, section => system.Strokes(section, Side.L))),
        Line("strokes to R", Each(system.SectionCount, section => system.Strokes(section, Side.R))),
        Line("delivered", Each(system.OutletCount, system.OutletDeliveredM3)),
        Line("flows", Each(system.OutletCount, system.OutletFlowM3PerS)),
        Line("injectors", Each(system.InjectorCount, system.InjectorDischarged)),
        Line("discharges", Each(system.InjectorCount, system.InjectorDischarges)),
        Line("switches", Each(system.CycleSwitchCount, system.CycleSwitchOn)),
        Line("actuated", Each(system.CycleSwitchCount, system.CycleSwitchActuated)),
        Line("crossings", Each(system.CycleSwitchCount, system.TripCrossings)),
        Line("shaft", system.ShaftSpeedRevPerS, system.ShaftRevolutions, system.HasShaft ? system.ShaftPulsesAt(system.NowUs) : 0),
        Line("faults", [.. system.FaultLog.Entries]),
    ];

    private static object[] Each<T>(int count, System.Func<int, T> reading) => [.. Enumerable.Range(0, count).Select(index => (object)reading(index)!)];

    private static string Line(string name, params object[] values) =>
        name + ": " + string.Join(", ", values.Select(value => value is double number ? number.ToString("R", CultureInfo.InvariantCulture) : value.ToString()));
}
