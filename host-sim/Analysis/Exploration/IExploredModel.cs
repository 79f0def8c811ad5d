using System;

namespace LubeController.Analysis.Exploration;

/// <summary>
/// A machine with finitely many states and letters, to be explored. It exists so that the search knows nothing of lubrication
/// and can be measured on other machines. Each worker has one of its own; none is asked from two threads.
/// </summary>
public interface IExploredModel
{
    /// <summary>What <see cref="Move"/> returns where the letter is not one of this state.</summary>
    const int NoSuchMove = -2;

    /// <summary>What <see cref="Move"/> and <see cref="Probe"/> return where nothing is violated.</summary>
    const int Holds = -1;

    /// <summary>Bytes of a state from which the machine goes on.</summary>
    int StateLength { get; }

    /// <summary>Most bytes by which states are compared.</summary>
    int CompareLength { get; }

    /// <summary>Letters, from 0 to one less, 1 to 65535.</summary>
    int Letters { get; }

    /// <summary>Writes the state from which everything begins.</summary>
    void WriteFirst(Span<byte> state);

    /// <summary>Goes to a state and from there one step by a letter.</summary>
    /// <returns><see cref="Holds"/>, <see cref="NoSuchMove"/>, or the number of the property that is violated.</returns>
    int Move(ReadOnlySpan<byte> state, int letter);

    /// <summary>Writes what tells the present state from others: two states that write the same have the same future.</summary>
    /// <returns>Bytes written.</returns>
    int Compare(Span<byte> buffer);

    /// <summary>Writes the present state, from which <see cref="Move"/> can go on.</summary>
    void Write(Span<byte> state);

    /// <summary>Tries from the present state, which is a new one, whatever takes more than one step. The machine may be left anywhere.</summary>
    /// <returns><see cref="Holds"/>, or the number of the property that is violated.</returns>
    int Probe();
}
