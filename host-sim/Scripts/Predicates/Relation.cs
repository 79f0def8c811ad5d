namespace LubeController.Scripts.Predicates;

/// <summary>How a predicate compares.</summary>
public enum Relation
{
    /// <summary>Equal; <c>is</c> or <c>=</c>.</summary>
    Equal,

    /// <summary>Not equal; <c>is not</c> or <c>!=</c>.</summary>
    NotEqual,

    /// <summary>Below; <c>&lt;</c>.</summary>
    Less,

    /// <summary>At most; <c>&lt;=</c>.</summary>
    LessOrEqual,

    /// <summary>Above; <c>&gt;</c>.</summary>
    Greater,

    /// <summary>At least; <c>&gt;=</c>.</summary>
    GreaterOrEqual,
}
