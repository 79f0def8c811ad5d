using System;

namespace LubeController.Emulator;

/// <summary>A code of the core and what it is called.</summary>
/// <param name="Code">The code.</param>
/// <param name="Word">Its word, never null.</param>
public sealed record CodeWord<TCode>(TCode Code, string Word)
    where TCode : struct, Enum;
