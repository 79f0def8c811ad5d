using System;
using System.Collections.Generic;
using System.Linq;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>
/// What the supervisory system sees at one time: for each input the states it may be in, one where that is certain,
/// several where a digital input stands in the zone that its standard leaves undefined.
/// </summary>
public sealed class WiringPicture
{
    private readonly SupervisoryWiringDescription _wiring;
    private readonly IReadOnlyList<string>[] _states;
    private readonly int[] _possible;

    private WiringPicture(SupervisoryWiringDescription wiring, IReadOnlyList<string>[] states, int[] possible)
    {
        _wiring = wiring;
        _states = states;
        _possible = possible;
    }

    /// <summary>Reads every input.</summary>
    public static WiringPicture Of(SupervisoryWiring wiring)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        int inputs = wiring.Description.Inputs.Count;
        var states = new IReadOnlyList<string>[inputs];
        int[] possible = new int[inputs];
        for (int input = 0; input < inputs; input++)
        {
            states[input] = wiring.StatesOf(input);
            possible[input] = wiring.IsUndefined(input) ? (1 << states[input].Count) - 1 : 1 << wiring.StateOf(input);
        }

        return new WiringPicture(wiring.Description, states, possible);
    }

    /// <summary>Whether it certainly is another picture: on some input the two have no state in common.</summary>
    public bool DiffersFrom(WiringPicture other)
    {
        for (int input = 0; input < _possible.Length; input++)
        {
            if ((_possible[input] & other._possible[input]) == 0)
                return true;
        }

        return false;
    }

    /// <summary>Whether every input certainly is in the same state in both.</summary>
    public bool IsCertainly(WiringPicture other)
    {
        for (int input = 0; input < _possible.Length; input++)
        {
            if (_possible[input] != other._possible[input] || int.PopCount(_possible[input]) != 1)
                return false;
        }

        return true;
    }

    /// <summary>Indexes of the inputs on which the two certainly differ.</summary>
    public IEnumerable<int> Differences(WiringPicture other) =>
        Enumerable.Range(0, _possible.Length).Where(input => (_possible[input] & other._possible[input]) == 0);

    /// <summary>Whether an input may be in a state.</summary>
    /// <param name="input">Index of the input.</param>
    /// <param name="state">Name of the state.</param>
    public bool Allows(int input, string state)
    {
        for (int index = 0; index < _states[input].Count; index++)
        {
            if (_states[input][index] == state)
                return (_possible[input] & (1 << index)) != 0;
        }

        return false;
    }

    /// <summary>Each input and its state, for instance <c>healthy on, warning off</c>.</summary>
    public override string ToString() => string.Join(", ", _possible.Select((_, input) => $"{_wiring.Inputs[input].Name} {Text(input)}"));

    private string Text(int input) => int.PopCount(_possible[input]) == 1 ? _states[input][int.Log2(_possible[input])] : "undefined";
}
