using System;
using System.Collections.Generic;
using System.Linq;
using CsCheck;
using LubeController.Plant.Faults;

namespace LubeController.Plant.Tests.Proof;

/// <summary>What may be done to a plant at any time: pump, vent valve, temperature, refill, and every fault of the registry.</summary>
/// <param name="AtUs">When, us.</param>
/// <param name="What">Which kind of command.</param>
/// <param name="Which">Chooses a fault and its part.</param>
/// <param name="HowMuch">Magnitude, 0 to 1.</param>
internal readonly record struct RandomCommand(long AtUs, int What, int Which, double HowMuch)
{
    private const int Ordinary = 12;

    internal static Gen<RandomCommand[]> Within(long endUs, int most) =>
        Gen.Select(Gen.Long[0, endUs], Gen.Int[0, 29], Gen.Int[0, 9999], Gen.Double[0, 1])
            .Select((atUs, what, which, howMuch) => new RandomCommand(atUs, what, which, howMuch))
            .Array[0, most].Select(commands => commands.OrderBy(command => command.AtUs).ToArray());

    /// <summary>What a person does: nothing that allocates.</summary>
    internal void Operate(LubricationSystem system)
    {
        switch (What % Ordinary)
        {
            case < 4:
                system.SetPumpContact(true);
                break;
            case < 7:
                system.SetPumpContact(false);
                break;
            case < 9:
                system.SetVentValve(HowMuch < 0.5);
                break;
            case 9:
                system.SetTemperature(253 + (HowMuch * 100));
                break;
            case 10:
                system.Refill(system.Description.Reservoir.CapacityM3 * HowMuch);
                break;
            default:
                system.SetShaftSpeed(HowMuch * 20, Which % 10);
                break;
        }
    }

    internal void Do(LubricationSystem system)
    {
        if (What < Ordinary)
        {
            Operate(system);
            return;
        }

        if (What == Ordinary)
        {
            system.HealAllFaults();
            return;
        }

        Fault fault = FaultCatalogue.All[Which % FaultCatalogue.All.Count];
        IReadOnlyList<string> parts = FaultCatalogue.PartNames(fault, system.Description);
        if (parts.Count == 0)
            return;
        string part = parts[Which / FaultCatalogue.All.Count % parts.Count];
        if (HowMuch < 0.2)
            system.HealFault(fault, part);
        else
            system.ApplyFault(fault, part, fault.Parameter is { } parameter ? Magnitude(parameter) : null);
    }

    // From nothing over the default to ten times of it, within what is accepted.
    private double Magnitude(FaultParameter parameter)
    {
        double part = (HowMuch - 0.2) / 0.8;
        double magnitude = parameter.Default == 0 ? parameter.Minimum : parameter.Default * Math.Pow(10, (2 * part) - 1);
        return Math.Clamp(magnitude, parameter.Minimum, parameter.Maximum);
    }
}
