using LubeController.Plant.Numbers;

namespace LubeController.Plant.Inputs;

/// <summary>A digital input: reads voltage and current at its terminals, and has a level whatever they mean.</summary>
public sealed class DigitalInput
{
    private readonly SeededGenerator _generator;
    private readonly InputRegions _regions;
    private readonly UndefinedPolicy _policy;

    /// <summary>Makes an input that has read nothing yet: off.</summary>
    /// <param name="type">Type of IEC 61131-2.</param>
    /// <param name="policy">What it makes of the undefined zone.</param>
    /// <param name="seed">Seed for <see cref="UndefinedPolicy.Seeded"/>.</param>
    public DigitalInput(InputType type, UndefinedPolicy policy, ulong seed)
    {
        _regions = InputRegions.Of(type);
        _policy = policy;
        _generator = new SeededGenerator(seed);
    }

    /// <summary>The level.</summary>
    public bool On { get; private set; }

    /// <summary>What was read last.</summary>
    public InputReading Reading { get; private set; } = InputReading.Off;

    /// <summary>Reads the terminals.</summary>
    /// <param name="voltageV">V; not a number where the terminal floats, which reads off.</param>
    /// <param name="currentA">A into the input.</param>
    /// <returns>The level.</returns>
    public bool Read(double voltageV, double currentA) => Take(Judge(voltageV, currentA));

    /// <summary>What a voltage and a current mean, without taking them.</summary>
    public InputReading Judge(double voltageV, double currentA) => _regions.Read(voltageV, currentA);

    /// <summary>Takes a reading that was judged elsewhere.</summary>
    /// <returns>The level.</returns>
    public bool Take(InputReading reading)
    {
        bool entered = reading == InputReading.Undefined && Reading != InputReading.Undefined;
        Reading = reading;
        On = reading switch
        {
            InputReading.Off => false,
            InputReading.On => true,
            _ => _policy switch
            {
                UndefinedPolicy.Low => false,
                UndefinedPolicy.High => true,
                UndefinedPolicy.Seeded when entered => (_generator.Next() & 1) != 0,
                _ => On,
            },
        };
        return On;
    }
}
