using System;
using System.Linq;
using LubeController.Handbook.Tests.Fluids;
using LubeController.Plant;
using LubeController.Plant.Description;
using LubeController.Plant.Divider;
using LubeController.Plant.Line;
using LubeController.Plant.Pistons;
using LubeController.Plant.Sensors;
using Xunit;

namespace LubeController.Handbook.Tests.Hydraulics;

/// <summary>What holds of every series-progressive divider. Source of each: derived from the geometry.</summary>
public sealed class DividerInvariantTests
{
    public static TheoryData<double[], string> Dividers() => new()
    {
        { [0.1, 0.2, 0.2, 0.5], "tttt" },
        { [0.1, 0.2, 0.2, 0.5], "ttts" },
        { [0.2, 0.2, 0.2, 0.2, 0.2, 0.2], "tttttt" },
        { [0.08, 0.16, 0.24, 0.24, 0.16], "tstts" },
    };

    /// <summary>Derived: the outlets' volumes of one cycle sum to Vc = 2 sum(Vi); a twin outlet gets Vi/Vc of it, a single one 2 Vi/Vc.</summary>
    [Theory]
    [MemberData(nameof(Dividers))]
    public void The_outlets_of_one_cycle_get_their_shares_and_together_the_full_cycle_volume(double[] strokes, string singles)
    {
        LubricationSystem system = Plant(strokes, singles).Running();
        double full = 2 * strokes.Sum() * HandbookPlants.Cm3;
        Near.Relative(full, system.FullCycleVolumeM3, 1e-12);
        for (int cycle = 0; cycle < 5; cycle++)
        {
            double[] before = Delivered(system);
            system.AfterStrokes(2L * strokes.Length * (cycle + 1));
            double[] got = [.. Delivered(system).Zip(before, (after, first) => after - first)];
            Near.Relative(full, got.Sum(), 1e-4);
            for (int outlet = 0; outlet < got.Length; outlet++)
            {
                int section = system.Description.Outlets[outlet].Name[0] - '1';
                double share = (singles[section] == 's' ? 2 : 1) * strokes[section] / (2 * strokes.Sum());
                Near.Relative(share, got[outlet] / got.Sum(), 1e-4);
            }
        }
    }

    /// <summary>Derived: a switch at one end of one piston's travel gives one pulse, one on-edge and one off-edge, per full cycle.</summary>
    [Theory]
    [MemberData(nameof(Dividers))]
    public void A_switch_gives_one_pulse_a_cycle_whichever_piston_and_end_it_senses(double[] strokes, string singles)
    {
        PlantDescription plant = Plant(strokes, singles);
        CycleSwitchDescription[] switches =
        [
            .. strokes.SelectMany((_, i) => new[] { Side.L, Side.R }.Select(end => new CycleSwitchDescription { Name = $"{i + 1}{end}", Section = $"{i + 1}", End = end })),
        ];
        LubricationSystem system = (plant with { CycleSwitches = switches }).Running();
        var counter = new EdgeCounter(system);
        system.Observer = counter;
        system.AfterStrokes(2L * strokes.Length * 20);

        // The start with all at L is already an on-edge of those at L.
        for (int i = 0; i < switches.Length; i++)
        {
            Assert.InRange(counter.On[i], 19, 20);
            Assert.InRange(counter.Off[i], 19, 20);
        }
    }

    /// <summary>Derived: |trip-point crossings · Vc - volume displaced by the pistons| is at most Vc, with one wave.</summary>
    [Theory]
    [MemberData(nameof(Dividers))]
    public void Trip_point_crossings_times_the_full_cycle_volume_never_differ_from_what_was_displaced_by_more_than_one(double[] strokes, string singles)
    {
        PlantDescription plant = Plant(strokes, singles) with { CycleSwitches = [new CycleSwitchDescription { Name = "s", Section = "2" }] };
        LubricationSystem system = plant.Running();
        double most = 0;
        while (system.NowUs < 600_000_000)
        {
            system.Step();
            Assert.Equal(1, system.Waves);
            most = Math.Max(most, system.TripVolumeDifferenceM3(0));
        }

        Assert.InRange(most / system.FullCycleVolumeM3, 0.5, 1 + 1e-9);
    }

    /// <summary>Derived: stopping one piston stops all, wherever it stands.</summary>
    [Theory]
    [MemberData(nameof(Dividers))]
    public void Stopping_one_piston_stops_all(double[] strokes, string singles)
    {
        for (int stopped = 0; stopped < strokes.Length; stopped++)
        {
            LubricationSystem system = Plant(strokes, singles).Running();
            system.AdvanceTo(23_456_789);
            system.ApplyFault(DividerFaults.PistonStuck, $"{stopped + 1}");
            system.AdvanceTo(120_000_000);
            double displaced = system.DisplacedM3;
            system.AdvanceTo(1_200_000_000);

            Assert.Equal(displaced, system.DisplacedM3);
            system.HealFault(DividerFaults.PistonStuck, $"{stopped + 1}");
            system.AdvanceTo(1_230_000_000);
            Assert.True(system.DisplacedM3 > displaced);
        }
    }

    /// <summary>
    /// Derived: change of stored = in - delivered - relieved - leaked, as volume at the reference state, ingested air
    /// included, here with all of them at work and each worked out by itself.
    /// </summary>
    [Theory]
    [MemberData(nameof(Dividers))]
    public void What_goes_in_less_what_goes_out_is_what_is_stored(double[] strokes, string singles)
    {
        PlantDescription plant = Plant(strokes, singles).BackPressure("1R", 30);
        plant = plant with
        {
            Reservoir = plant.Reservoir with { CapacityM3 = 1e-3, ContentM3 = 60e-6, LowLevelM3 = 2e-5, EmptyLevelM3 = 1e-5, AeratesBelowM3 = 40e-6, EntrainedAir = 0.01 },
            Line = plant.Line with { AirM3 = 0.5e-6 },
            Relief = new ReliefDescription { OpeningPressurePa = 33 * HandbookPlants.Bar, OverridePa = 20 * HandbookPlants.Bar },
        };
        LubricationSystem system = plant.Running();
        system.ApplyFault(LineFaults.Leak, value: 3e-8);
        system.AdvanceTo(900_000_000);

        VolumeBalance balance = system.Balance();
        Assert.All(
            new[] { balance.PumpedM3, balance.IngestedAirM3, balance.DeliveredM3, balance.RelievedM3, balance.LeakedM3, balance.AirOutM3 },
            volume => Assert.True(volume > 1e-9, balance.ToString()));
        double change = balance.PumpedM3 + balance.IngestedAirM3 - balance.DeliveredM3 - balance.RelievedM3 - balance.ReturnedM3 - balance.LeakedM3 - balance.AirOutM3;
        Assert.Equal(balance.LineStoredM3 - balance.LineStoredAtStartM3, change, 1e-9 * (balance.PumpedM3 + balance.IngestedAirM3));
        Assert.InRange(balance.RelativeError, 0, 1e-9);
    }

    private static PlantDescription Plant(double[] strokes, string singles) => HandbookPlants.Of(12, strokes, singles);

    private static double[] Delivered(LubricationSystem system) => [.. Enumerable.Range(0, system.OutletCount).Select(system.OutletDeliveredM3)];

    private sealed class EdgeCounter(LubricationSystem system) : IPlantObserver
    {
        private readonly bool[] _levels = [.. Enumerable.Range(0, system.CycleSwitchCount).Select(system.CycleSwitchOn)];

        internal int[] On { get; } = new int[system.CycleSwitchCount];

        internal int[] Off { get; } = new int[system.CycleSwitchCount];

        public void OnEvent(LubricationSystem system, long timeUs, in PlantChange change)
        {
            for (int i = 0; i < _levels.Length; i++)
            {
                if (system.CycleSwitchOn(i) == _levels[i])
                    continue;
                _levels[i] = !_levels[i];
                (_levels[i] ? On : Off)[i]++;
            }
        }
    }
}
