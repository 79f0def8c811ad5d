using System;
using System.Collections.Generic;
using LubeController.Plant;
using LubeController.Plant.Faults;

namespace LubeController.Tests.Draws;

/// <summary>What may be done to a plant at any time: pump, vent valve, temperature, refill, and every fault of the registry.</summary>
/// <param name="AtUs">When, us.</param>
/// <param name="What">Which kind of command.</param>
/// <param name="Which">Chooses a fault and its part.</param>
/// <param name="HowMuch">Magnitude, 0 to 1.</param>
public readonly record struct PlantCommand(long AtUs, int What, int Which, double HowMuch)
{
    private const int Ordinary = 12;

    /// <summary>Number of kinds: twelve of what a person does, one that heals everything, and faults for the rest.</summary>
    public const int Kinds = 30;

    /// <summary>What a person does: nothing that allocates.</summary>
    public void Operate(LubricationSystem system)
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
                system.SetShaftSpeed(HowMuch * 30, Which % 100);
                break;
        }
    }

    /// <summary>Carries the command out; a fault of which the plant has no part does nothing.</summary>
    public void Do(LubricationSystem system)
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
