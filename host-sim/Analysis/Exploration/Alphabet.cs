using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Core;
using LubeController.Emulator;

namespace LubeController.Analysis.Exploration;

/// <summary>One letter: an input image, the button held down with it, and what becomes of the power.</summary>
/// <param name="Inputs">The input image of the step.</param>
/// <param name="Values">Index of the value of each dimension.</param>
/// <param name="Button">The button held down, or null.</param>
/// <param name="Cut">The power.</param>
public sealed record Letter(Inputs Inputs, IReadOnlyList<int> Values, Button? Button, PowerCut Cut);

/// <summary>Everything that can happen in one step of an exploration: every combination of what it varies.</summary>
public sealed class Alphabet
{
    /// <summary>Most letters.</summary>
    public const int Most = 4096;

    /// <summary>Makes the letters.</summary>
    /// <param name="dimensions">The inputs that vary; others stay as they are without a fault.</param>
    /// <param name="buttons">Buttons that may be held down, one at a time.</param>
    /// <param name="cuts">What may become of the power, other than nothing.</param>
    /// <exception cref="ArgumentException">More letters than <see cref="Most"/>.</exception>
    public Alphabet(IReadOnlyList<Dimension> dimensions, IReadOnlyList<Button> buttons, IReadOnlyList<PowerCut> cuts)
    {
        ArgumentNullException.ThrowIfNull(dimensions);
        ArgumentNullException.ThrowIfNull(buttons);
        Dimensions = dimensions;
        ArgumentNullException.ThrowIfNull(cuts);
        PowerCut[] power = [PowerCut.None, .. cuts];
        long count = dimensions.Aggregate(1L + buttons.Count, (product, dimension) => Math.Min(product * dimension.Values.Count, int.MaxValue)) * power.Length;
        if (count > Most)
            throw new ArgumentException($"{count} letters, at most {Most}", nameof(dimensions));
        Letters = [.. All(power, buttons)];
    }

    /// <summary>The inputs that vary.</summary>
    public IReadOnlyList<Dimension> Dimensions { get; }

    /// <summary>All letters; the first has nothing wrong in it.</summary>
    public IReadOnlyList<Letter> Letters { get; }

    /// <summary>The input image with nothing wrong, no button held down.</summary>
    public Inputs Quiet => Letters[0].Inputs;

    /// <summary>Whether an input varies or has a value of its own.</summary>
    public bool Has(ControllerInput input) => Dimensions.Any(dimension => dimension.Input == input);

    private IEnumerable<Letter> All(PowerCut[] power, IReadOnlyList<Button> buttons)
    {
        var values = new int[Dimensions.Count];
        do
        {
            for (int button = -1; button < buttons.Count; button++)
            {
                foreach (PowerCut cut in power)
                {
                    Button? held = button < 0 ? null : buttons[button];
                    yield return new Letter(Image(values, held), [.. values], held, cut);
                }
            }
        }
        while (Advance(values));
    }

    private bool Advance(int[] values)
    {
        for (int place = 0; place < values.Length; place++)
        {
            if (++values[place] < Dimensions[place].Values.Count)
                return true;
            values[place] = 0;
        }

        return false;
    }

    private Inputs Image(int[] values, Button? button)
    {
        var inputs = new Inputs();
        for (int place = 0; place < values.Length; place++)
            Dimensions[place].Apply(inputs, values[place]);
        if (button is { } held)
            ControllerInputs.Of(held).Set(inputs, 1);
        return inputs;
    }
}
