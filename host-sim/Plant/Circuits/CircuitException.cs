using System;

namespace LubeController.Plant.Circuits;

/// <summary>A circuit that has no single answer. The message names the elements at fault and what would help.</summary>
public sealed class CircuitException : Exception
{
    /// <summary>Makes one without a message.</summary>
    public CircuitException()
    {
    }

    /// <summary>Makes one.</summary>
    public CircuitException(string message)
        : base(message)
    {
    }

    /// <summary>Makes one with its cause.</summary>
    public CircuitException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
