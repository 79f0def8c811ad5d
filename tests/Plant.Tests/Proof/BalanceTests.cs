using System;
using System.Linq;
using System.Threading;
using CsCheck;
using LubeController.Plant.Description;
using LubeController.Tests.Draws;
using Xunit;

namespace LubeController.Plant.Tests.Proof;

/// <summary>What must hold of every plant, whatever is done to it.</summary>
[Trait("Run", "Long")]
public sealed class BalanceTests(ITestOutputHelper output)
{
    private const long EndUs = 60_000_000;

    // The costliest plants that were found take 1800: a passage so wide, with so little line before it, that every swing of a
    // few hundred pascal is followed. Half of all plants take less than 20.
    private const double MostStepsPerS = 5000;

    private const double MeanStepsPerS = 100;

    [Fact]
    public void Every_volume_is_accounted_for_to_a_billionth_whatever_plant_it_is_and_whatever_is_done_to_it()
    {
        double worst = 0;
        double most = 0;
        long steps = 0;
        int runs = 0;
        var sync = new Lock();
        Gen.Select(RandomPlants.Any, Generators.PlantCommands(EndUs, 20), Gen.ULong).Sample(
            (plant, commands, seed) =>
            {
                Assert.Empty(PlantCheck.Refusals(plant));
                var system = new LubricationSystem(plant, seed);
                system.SetPumpContact(true);
                foreach (PlantCommand command in commands)
                {
                    system.AdvanceTo(command.AtUs);
                    command.Do(system);
                    Sound(system);
                }

                system.AdvanceTo(EndUs);
                Sound(system);
                lock (sync)
                {
                    worst = Math.Max(worst, system.Balance().RelativeError);
                    most = Math.Max(most, system.StepCount / (EndUs / 1e6));
                    steps += system.StepCount;
                    runs++;
                }
            },
            iter: 300);

        double mean = steps / (runs * EndUs / 1e6);
        output.WriteLine($"{runs} runs: worst balance {worst:0.0e0}, {mean:0} steps a second in the mean and {most:0} in the worst run");
        Assert.InRange(most, 0, MostStepsPerS);
        Assert.InRange(mean, 1, MeanStepsPerS);
    }

    [Fact]
    public void Nothing_is_allocated_once_a_plant_runs_whatever_plant_it_is()
    {
        const long warmUpUs = EndUs / 3;
        long steps = 0;
        Gen.Select(RandomPlants.Any, Generators.PlantCommands(warmUpUs, 15), Generators.PlantCommands(EndUs, 15), Gen.ULong).Sample(
            (plant, warmUp, commands, seed) =>
            {
                var system = new LubricationSystem(plant, seed);
                system.SetPumpContact(true);
                foreach (PlantCommand command in warmUp)
                {
                    system.AdvanceTo(command.AtUs);
                    command.Do(system);
                }

                system.AdvanceTo(warmUpUs);
                long stepsBefore = system.StepCount;
                long before = GC.GetAllocatedBytesForCurrentThread();
                foreach (PlantCommand command in commands)
                {
                    system.AdvanceTo(Math.Max(system.NowUs, command.AtUs));
                    command.Operate(system);
                }

                system.AdvanceTo(EndUs);
                long after = GC.GetAllocatedBytesForCurrentThread();

                Assert.Equal(0, after - before);
                Interlocked.Add(ref steps, system.StepCount - stepsBefore);
            },
            iter: 150);

        Assert.True(steps > 10_000, "Hardly anything happened.");
    }

    private static void Sound(LubricationSystem system)
    {
        Assert.InRange(system.LinePressurePa, 0, double.MaxValue);
        Assert.InRange(system.EndPressurePa, 0, double.MaxValue);
        // A full mark is no lid: what the line gives back after a filling stands above it.
        VolumeBalance balance = system.Balance();
        Assert.InRange(balance.RelativeError, 0, 1e-9);
        Assert.InRange(system.ReservoirContentM3, 0, system.Description.Reservoir.CapacityM3 + balance.RelievedM3 + balance.ReturnedM3);
        Assert.True(system.LineAirM3 >= 0);
        for (int section = 0; section < system.SectionCount; section++)
            Assert.InRange(system.PistonTravel(section), 0, 1);
        for (int outlet = 0; outlet < system.OutletCount; outlet++)
            Assert.True(system.OutletDeliveredM3(outlet) >= 0);
        for (int injector = 0; injector < system.InjectorCount; injector++)
            Assert.InRange(system.InjectorDischarged(injector), 0, 1);
        for (int cycle = 0; cycle < system.CycleSwitchCount; cycle++)
        {
            if (system.Waves == 1 && system.Description.AllSections.All(section => section.InitialTravel is 0))
                Assert.InRange(system.TripVolumeDifferenceM3(cycle), 0, system.CycleVolumeM3(cycle) * (1 + 1e-6));
        }
    }
}
